# Markers, their dots and their care.

ask-mark-with = Which marker? Tell me how it feels.
ask-mark-what = What goes under the { $marker }?
ask-marker-again = Say its shape, how it holds on, and how many dots.
ask-unmark = Take a marker off what?
ask-new-marker = How does it feel: its shape, and how it holds on?
ask-which-marker = Which marker?
ask-dots = How many dots?
ask-dots-mean = What { $dots ->
    [one] does one dot mean
   *[other] do { $dots } dots mean
  }?
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
add-dots = { $dots ->
    [one] add one raised dot
   *[other] add { $dots } raised dots
  }
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
dots-mean = { $dots ->
    [one] One dot means { $meaning }.
   *[other] { CAP($dots) } dots mean { $meaning }.
  }
dots-meant = Until now: { $old }.
dots-on = { $count ->
    [one] One food has them.
   *[other] { $count } foods have them.
  }
dots-mean-nothing = { $dots ->
    [one] One dot has no meaning here.
   *[other] { CAP($dots) } dots have no meaning here.
  } You can give it one.
confirm-dots = { $dots ->
    [one] One dot means { $meaning }
   *[other] { CAP($dots) } dots mean { $meaning }
  }. Right? Yes or no.
confirm-dots-replace = Until now { $dots ->
    [one] one dot means
   *[other] { $dots } dots mean
  } { $old }{ $count ->
    [0] {""}
    [one] , on one food
   *[other] , on { $count } foods
  }. Change it to { $meaning }? Yes or no.
no-dot-meanings = No dots have a meaning yet. Say, for example, one dot means low fat.
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
