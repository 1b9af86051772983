# The labels page, and chips.

labels-title = Labels
labels-how = Large print, Braille lines and a square code with thick corners. Raise the corners with tactile paint or tape, so that a finger finds the code. Braille from an ordinary printer cannot be felt: it shows a sighted helper where to emboss, or goes through a heater on swell paper; an embosser takes the BRF file.
labels-local = The square codes would hold { $address }, which only the machine itself can open. Whoever runs the service sets PUBLIC_URL to the address that phones reach it by.
labels-nothing = There is nothing to label yet. Put food away on the board first, or add a marker on the page Home.
labels-items = Items
labels-markers = Markers
labels-all-items = Pick all items
labels-no-items = Pick no items
labels-all-markers = Pick all markers
labels-no-markers = Pick no markers
labels-marker = marker
labels-sheet = Sheet
labels-own-size = A size of my own
labels-millimetres = Size in millimetres
labels-width = Width
labels-height = Height
labels-braille = Braille
labels-grade-2 = Unified English Braille, contracted (grade 2)
labels-grade-1 = Unified English Braille, uncontracted (grade 1)
labels-no-braille = None
labels-print = Get the print sheet (PDF)
labels-emboss = Get the embosser file (BRF)
labels-pick-one = Pick at least one item or marker.
labels-ready = { $name } is ready.
counted-dot = { $count ->
    [one] one dot
   *[other] { $count } dots
  }
counted-knot = { $count ->
    [one] one knot
   *[other] { $count } knots
  }
counted-ridge = { $count ->
    [one] one ridge
   *[other] { $count } ridges
  }
counted-notch = { $count ->
    [one] one notch
   *[other] { $count } notches
  }

guide-heading = The key to this household’s touch
guide-how = One page for family and visitors: what nobody here must be given, what the markers and their points mean, where things are, what to say. Large print, or for an embosser.
guide-print = Get the key to print (PDF)
guide-emboss = Get the key to emboss (BRF)

nfc-heading = A chip for { $name }, for a phone to touch
nfc-how = Touching the chip with a phone opens the board with this in hand.
nfc-cannot = This browser cannot put it on a chip: what goes on it
nfc-address = As an address:
nfc-bytes = As the bytes of its one record:
nfc-put = Put it on a chip
nfc-hold = Hold the chip to the back of the phone
nfc-done = { $name } is on the chip.
