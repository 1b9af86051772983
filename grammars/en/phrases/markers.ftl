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
marked-all = { CAP(OF($amount, $name)) }, each marked with the { $marker }.
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
confirm-unmark-other = On the { $name } is the { $marker }. Take that off? Yes or no.
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
meanings-checked = { $count ->
    [0] Nothing here has a mark with a meaning.
    [one] One thing is marked, and nothing on record speaks against it.
   *[other] { CAP($count) } things are marked, and nothing on record speaks against them.
  }
meanings-doubted = { $doubts ->
    [one] One doubt: { $which }.
   *[other] { CAP($doubts) } doubts: { $which }.
  }
meaning-must-not = { THE($name) } { IS($name) } for { $person }, and said to contain { $allergens }, which { $person } must not have
meaning-contains = { THE($name) } { IS($name) } marked { $meaning }, and { $how ->
    [usually] such food usually holds
   *[contains] { IS($name) } said to contain
  } { $allergens }
meaning-animal = { THE($name) } { IS($name) } marked { $meaning }, and by the name it is meat or fish
meaning-free = the marker on { THE($name) } says { $allergens }, and { THE($name) } { IS($name) } recorded free from it
meaning-owner = { THE($name) } { IS($name) } marked { $meaning }, and recorded as belonging to { $owner }
meaning-unmarked = { THE($name) } { IS($name) } recorded as { $caution }, without { $raised }
meaning-unsaid = Nothing else on record says { $meaning } of { $names }.
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
  } { $meaning }{ $count ->
    [0] {""}
    [one] , on one food
   *[other] , on { $count } foods
  }. Right? Yes or no.
confirm-dots-replace = Until now { $raised } { $dots ->
    [one] means
   *[other] mean
  } { $old }{ $count ->
    [0] {""}
    [one] , on one food
   *[other] , on { $count } foods
  }. Change it to { $meaning }? Yes or no.
meaning-not-kept = Not kept: { $marker }, { $meaning }. Only counted dots, knots or ridges have meanings here.
meaning-not-kept-of-diet = Not kept: { $marker }, { $meaning }. Only counted dots, knots or ridges have meanings here. Tell me of each food what is in it.
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
markers-all = { $count ->
    [one] One marker
   *[other] { CAP($count) } markers
  }, { $spare } spare: { $markers }.
no-spare = No marker is spare.
spare-markers = { $count ->
    [one] One spare: { $markers }.
   *[other] { $count } spare: { $markers }.
  }
marker-on = { $marker } on the { $name }
marker-spare-short = { $marker }, spare
marker-was-on = { $marker }, last on the { $name }

# Choosing one.
ask-suggest-for = A marker for what?
suggest = The { $marker }, for the { $name }.
suggest-nothing-near = Nothing marked stands near it, so any would do.
suggest-unlike = { $by ->
    [fastening] It is nothing like the { $marker } on the { $name }.
    [material] It feels other than the { $marker } on the { $name }.
    [shape] Its shape is other than the { $marker } on the { $name }.
    [spot] It sits elsewhere than the { $marker } on the { $name }.
   *[count] You count other on it than on the { $marker } on the { $name }.
  }
suggest-close = It feels rather like the { $marker } on the { $name }; none that is free is less like it.
suggest-second = Or the { $marker }.
suggest-put-on = Put it on?
suggest-none = No marker is free that would suit the { $name }.
suggest-make = Take another { $marker } and { $way }.
suggest-get = A rubber band or a safety pin would do to begin with.
none-alike = No two on one shelf feel alike.
alike-count = { $count ->
    [one] Two neighbours feel alike.
   *[other] { CAP($count) } pairs of neighbours feel alike.
  }
alike-pair = { CAP($at) }: the { $one } on the { $first }, and the { $other } on the { $second }.
alike-way = For the { $name } you could { $way }.
none-care = { $what ->
    [wet] None is known to mind the wet.
    [dishwasher] None is known to mind the dishwasher.
    [freezer] None is known to mind the freezer.
    [heat] None is known to mind heat.
   *[microwave] None is known to mind the microwave.
  }
care-count = { $what ->
    [wet] { CAP($count) } should not get wet.
    [dishwasher] { CAP($count) } should not go in the dishwasher.
    [freezer] { CAP($count) } should not go in the freezer.
    [heat] { CAP($count) } should be kept from heat.
   *[microwave] { CAP($count) } should not go in the microwave.
  }
care-recorded = On record: { $markers }.
care-made-of = By what they are made of: { $markers }.
care-unknown-of = { $count ->
    [one] Of one nothing is recorded.
   *[other] Of { $count } nothing is recorded.
  }

# Carried over, swapped, and what one was on before.
ask-swap = Which two change markers?
now-wears = { CAP(THE($name)) } now { HAS($name) } the { $marker }.
now-wears-none = { CAP(THE($name)) } { HAS($name) } no marker now.
marker-bore = The { $marker } was on { THE($name) } before.
    .short = On { THE($name) }.
marker-bore-unknown = What the { $marker } was on before, I have not recorded.
    .short = Not recorded.
marker-bears = Now it is on { THE($name) }.
    .short = {""}
care-may = Yes, { $what ->
    [wet] it may get wet
    [dishwasher] it may go in the dishwasher
    [freezer] it may go in the freezer
    [heat] it may get hot
   *[microwave] it may go in the microwave
  }.
    .short = Yes.
care-may-not = No, { $what ->
    [wet] keep it out of water
    [dishwasher] keep it out of the dishwasher
    [freezer] keep it out of the freezer
    [heat] keep it away from heat
   *[microwave] keep it out of the microwave
  }.
    .short = No.
care-by-make = By what the { $marker } is made of.
    .short = {""}
care-not-said = { $what ->
    [wet] Whether it may get wet is not recorded.
    [dishwasher] Whether it may go in the dishwasher is not recorded.
    [freezer] Whether it may go in the freezer is not recorded.
    [heat] Whether it may get hot is not recorded.
   *[microwave] Whether it may go in the microwave is not recorded.
  }
none-like = Nothing here feels like the { $marker }.
marker-feels-near = To a hand, the { $marker } is near { $others }.
marker-on-at = the { $marker } on { THE($name) } { $at }
told-apart-by = To tell it apart, { $way }.
    .short = {""}
dots-mean-no-more = { CAP($raised) } no longer { $dots ->
    [one] means
   *[other] mean
  } { $old }.
confirm-dots-none = Until now { $raised } { $dots ->
    [one] means
   *[other] mean
  } { $old }{ $count ->
    [0] {""}
    [one] , on one food
   *[other] , on { $count } foods
  }. Take the meaning away? Yes or no.

# Lost, and found again.
marker-lost = { CAP($marker) } taken off record.{ $name ->
    [none] {""}
   *[other] {" "}{ CAP(THE($name)) } { HAS($name) } no marker now.
  }
confirm-lose-marker = Take the { $marker } off record, as lost? Yes or no.
marker-back = { CAP($marker) } back, in the spare box.
