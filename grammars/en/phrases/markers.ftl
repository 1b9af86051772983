# Markers, what is counted on them, and their care.

ask-mark-with = Which marker? Tell me how it feels.
ask-mark-what = What goes under the { $marker }?
ask-marker-again = Say what it is, what it is made of, and what can be counted on it.
ask-unmark = Take a marker off what?
ask-new-marker = How does it feel: what is it, and what is it made of?
ask-which-marker = Which marker?
ask-dots = How many { $counted ->
    [knot] knots
    [ridge] ridges
    [notch] notches
   *[dot] dots
  }?
ask-dots-mean = What { $dots ->
    [one] does
   *[other] do
  } { $raised } mean?
ask-care = How is the { $marker } looked after?

marked = { CAP($name) }, marked with the { $marker }.{ $old ->
    [none] {""}
   *[other] {" "}The { $old } is free.
  }
confirm-mark = Put the { $marker } on the { $name }? Yes or no.
confirm-take-marker = The { $marker } is on the { $from } now. Move it to the { $name }? Yes or no.
so-it-is = That marks it { $meaning }.
marker-feels-like = It feels like the one on the { $name }.{ $way ->
    [none] {""}
   *[other] {" "}To tell them apart, { $way }.
  }
add-dots = add { $raised }
move-to-spot = put it on the { $spot }
use-two = use two of them
unmarked = { CAP($name) }, no marker now.{ $marker ->
    [none] {""}
   *[other] {" "}The { $marker } is free.
  }
confirm-unmark = Take the marker off the { $name }? Yes or no.
marker-added = { CAP($marker) }, in the spare box.
confirm-add-marker = A new marker, the { $marker }? Yes or no.
confirm-alike = You have one that feels the same{ $name ->
    [none] {""}
   *[other] , on the { $name }
  }.{ $way ->
    [none] {""}
   *[other] {" "}You could { $way }.
  } Keep it as it is? Yes or no.
dots-mean = { CAP($raised) } { $dots ->
    [one] means
   *[other] mean
  } { $meaning }.
dots-meant = Until now: { $old }.
dots-on = { $count ->
    [one] One food has them.
   *[other] { $count } foods have them.
  }
dots-mean-nothing = { CAP($raised) } { $dots ->
    [one] has
   *[other] have
  } no meaning here. You can give it one.
confirm-dots = { CAP($raised) } { $dots ->
    [one] means
   *[other] mean
  } { $meaning }. Right? Yes or no.
confirm-dots-replace = Until now { $raised } { $dots ->
    [one] means
   *[other] mean
  } { $old }{ $count ->
    [0] {""}
    [one] , on one food
   *[other] , on { $count } foods
  }. Change it to { $meaning }? Yes or no.
no-dot-meanings = No { $counted ->
    [knot] knots
    [ridge] ridges
    [notch] notches
   *[dot] dots
  } have a meaning yet. Say, for example, one knot means eat soon.
care-noted = { CAP($marker) }: { $care }.
confirm-care = For the { $marker }: { $care }? Yes or no.
care-is = { CAP($marker) }: { $care }.
care-unknown = Nothing is recorded about caring for the { $marker }.
no-markers = No markers are recorded yet.
markers-all = { $count } markers, { $spare } spare: { $markers }.
no-spare = No marker is spare.
spare-markers = { $count ->
    [one] One spare: { $markers }.
   *[other] { $count } spare: { $markers }.
  }
marker-on = { $marker } on the { $name }
marker-spare-short = { $marker }, spare
marker-was-on = { $marker }, last on the { $name }
