# Reheating, cooking, thawing, food left out, power cuts.

ask-reheat = Reheat what?
reheat-title = { $method ->
    [microwave] { $name } in the microwave
    [oven] { $name } in the oven
    [air-fryer] { $name } in the air fryer
    [hob] { $name } on the hob
    [steamer] { $name } in the steamer
   *[toaster] { $name } in the toaster
  }{ $from ->
    [freezer] , from frozen
   *[fridge] {""}
  }
instructions-told = Yes: { $ways }. Say walk me through it.
    .short = Yes: { $ways }.
instructions-way = for { $method ->
    [microwave] the microwave
    [oven] the oven
    [air-fryer] the air fryer
    [hob] the hob
    [steamer] the steamer
    [slow-cooker] the slow cooker
   *[toaster] the toaster
  }{ $count ->
    [none] {""}
    [one] , one step
   *[other] , { $count } steps
  }
instructions-none = No, nobody told me how to heat { THE($name) }. Say instructions for { $name }, and what to do.
    .short = No instructions for { THE($name) }.
reheat-minutes = { CAP($time) } at { $watts } watts.
    .full = { CAP($name) }: { $time } at { $watts } watts, then let it stand and check that it is hot all through.
recorded-heat = { CAP($heat) } { $method ->
    [oven] in the oven
    [air-fryer] in the air fryer
   *[other] as you told me
  }.
reheat-recorded-minutes = { CAP($time) } { $method ->
    [oven] in the oven
    [air-fryer] in the air fryer
    [hob] on the hob
    [steamer] in the steamer
   *[toaster] in the toaster
  }{ $heat ->
    [none] {""}
   *[other] {" "}at { $heat }
  }, as you told me.
# After the cook's own time or setting.
inside-too = Guidance wants { $temperature } inside.
reheat-other-power = The times told are for { $told } watts. Here, at { $watts }, it takes { $time } in all.
reheat-other-portions = The times are for { $told ->
    [one] one portion
   *[other] { $told } portions
  }; { $portions } take { $time }.
reheat-in-lots = The times are for { $told ->
    [one] one portion
   *[other] { $told }
  }: heat it in lots of that.
reheat-undated = No date is recorded for it. When in doubt, throw it out.
offer-throw-out = Shall I mark the { $name } as thrown out?

ask-cook = Which food?
cook-to = { CAP($temperature) } inside{ $rest ->
    [none] {""}
   *[other] , then { $rest } of rest
  }{ $hold ->
    [none] {""}
   *[other] , held for { $hold }
  }, for { $food }.
    .short = { CAP($temperature) }{ $rest ->
    [none] {""}
   *[other] , rest { $rest }
  }{ $hold ->
    [none] {""}
   *[other] , for { $hold }
  }.
# Of several foods: its name leads, so that no figure is heard for another.
cook-to-each = { CAP($food) }{ $again ->
    [yes] , reheated
   *[no] {""}
  }: { $temperature }{ $rest ->
    [none] {""}
   *[other] , then { $rest } of rest
  }{ $hold ->
    [none] {""}
   *[other] , held for { $hold }
  }.
cook-if-poultry = With chicken or turkey in it, { $temperature }.
cook-boil = Soups and sauces come to a rolling boil.

cook-by-label = How long and how, its label or your recipe says.
    .short = {""}
cook-recorded = Heating it is recorded: say reheat the { $name }.
    .short = {""}
cook-thermometer = Only a thermometer in the thickest part tells.
cook-colour = Go by a thermometer alone.

reheat-again-before = It was reheated { TIMES($times) } so far.
reheat-again-counts = The guidance I have counts no times: each time, { $temperature } all through, and heat only what is eaten.
reheat-again-once = Once only, guidance says{ $done ->
    [yes] , and that has been
   *[no] {""}
  }: { $temperature } all through, and throw out what is left.
reheat-none-noted = No reheating of it is recorded.
thaw-needed-no = No need: heating it from frozen is recorded.
thaw-takes = { $method ->
    [fridge] In the fridge, { $low ->
        [none] {""}
       *[other] { $low } to{" "}
      }{ $high }
   *[cold-water] in cold water, { $low ->
        [none] {""}
       *[other] { $low } to{" "}
      }{ $high }
  }, for { $name }.
thawed-by = Thawed by { $date ->
    [none] {""}
   *[other] { $date } at{" "}
  }{ $time }, in the fridge.
thaw-counter-no = No: guidance says never on the counter or in hot water.
thaw-not-frozen = { CAP(THE($name)) } { IS($name) } on record { $at }, not in a freezer: nothing to thaw.
thaw-ways = The fridge, cold water or the microwave.

ask-thaw-when = When do you want the { $name }?
ask-thaw-weight = How many pounds { IS($name) } { THE($name) }?
ask-thaw-weight-again = Say a number of pounds, or about how heavy it is.
thaw-option = { $method ->
    [fridge] { $time ->
        [none] In the fridge: a day for every four to five pounds.
       *[other] In the fridge, starting { $date ->
            [none] today
           *[other] { ON($date) }
          } at { $time }.
      }
    [cold-water] { $time ->
        [none] In cold water: half an hour a pound.
       *[other] In cold water, starting { $date ->
            [none] today
           *[other] { ON($date) }
          } at { $time }.
      }
   *[microwave] In the microwave, just before cooking.
  }
thaw-title = thawing the { $name } { $method ->
    [cold-water] in cold water
    [fridge] in the fridge
   *[microwave] in the microwave
  }
thaw-step-into-water = Lay it in a bowl of cold water, all of it under.
thaw-step-change = Change the water.
thaw-step-change-for = Change the water every thirty minutes, for about { $time } in all.
thaw-step-leave = Leave it there for { $time }.
thaw-step-microwave = Defrost it by your microwave's own book.
thaw-too-late = It is too late to thaw the { $name } by then.
offer-remind = Shall I remind you?

ask-left-out = What was left out?
ask-out-since = Since when { HAS($name) } { THE($name) } been out?
ask-out-since-again = Say a time, such as noon, or how long, such as two hours.
left-out-refrigerate-now = Put the { $name } { $cold ->
    [freezer] back in the cold
   *[fridge] in the fridge
  } now{ $by ->
    [none] {""}
   *[other] , by { $by }
  }.
left-out-throw-out = Throw the { $name } out.
left-out-unknown = I cannot say, since nobody knows how long { THE($name) } { WAS($name) } out. When in doubt, throw it out.
left-out-no-figure = The { $name } keeps at room temperature, so go by its label.
left-out-limit = { CAP($limit) } out of the fridge, guidance says of { $name }{ $hot ->
    [none] {""}
   *[other] ; { $hot } above ninety degrees Fahrenheit
  }.
left-out-supposed = { $span ->
    [none] That
   *[other] { CAP($span) }
  } would be { $over ->
    [yes] too long for { $name }: throw it out then
   *[no] within guidance for { $name }
  }.
left-out-allows = Guidance allows { $limit }{ $hot ->
    [none] {""}
   *[other] ; { $hot } above ninety degrees Fahrenheit
  }.
offer-note-out = Shall I note the { $name } as standing out since then?
confirm-out = Note the { $name } as standing out? Yes or no.

ask-power-since = Since when has the power been out?
ask-doors = Have the fridge and the freezer stayed shut?
ask-fridge-door = And the fridge: has it stayed shut?
ask-doors-again = Were the fridge and the freezer opened since? Say yes if they stayed shut.
ask-full = Is the freezer full?
ask-full-again = Is it quite full? Say no if it is about half full.
power-more = More?
power-title = the power cut
power-first = Keep the doors shut.
power-reads-cold = The fridge reads cold enough, so its food keeps for now.
power-held = The fridge held: it was back within its hours.
# Said before it is known how the doors were.
power-if-shut = Keep the doors shut: so the fridge stays cold until about { $until }{ $date ->
    [none] {""}
   *[other] {" "}{ ON($date) }
  }.
power-so-far = { $over ->
    [yes] It was out for { $hours }.
   *[no] Out for { $hours } so far, since { $since }.
  }
# Nobody told how the doors were.
power-one-if-shut = { $name }: if the door stayed shut, cold until about { $until }{ $date ->
    [none] {""}
   *[other] {" "}{ ON($date) }
  }. If it was opened, a thermometer tells; in doubt, throw it out.
power-one-if-shut-held = { $name }: if the door stayed shut, within the hours the fridge holds. If it was opened, a thermometer tells; in doubt, throw it out.
power-was-out = Out for { $hours }.
power-if-shut-held = Out for { $hours }: if the doors stayed shut, all is within its hours.
# Both hold: said in one breath.
power-both-hold = The fridge stays cold until about { $fridge }, the freezer until about { $freezer }{ $date ->
    [none] {""}
   *[other] {" "}{ ON($date) }
  }.
power-holds = { $which ->
    [fridge] The fridge
   *[freezer] The freezer
  } { $state ->
    [holding] stays cold { $until ->
        [none] for now
       *[other] until about { $until }{ $date ->
            [none] {""}
           *[other] {" "}{ ON($date) }
          }
      }.
    [past] { $until ->
        [none] has been without power too long.
       *[other] was without power too long by { $until }.
      }
    [at-most] was opened: { $until }{ $date ->
        [none] {""}
       *[other] {" "}{ ON($date) }
      } at the most. Keep it shut.
   *[unknown] cannot be reckoned, since a door was open.
  }
power-tell-back = Tell me when it is back.
    .full = Tell me when the power is back, and we go through the food.
power-back = Out for { $hours }{ $discards ->
    [0] .
    [one] , and guidance says throw out one thing.
   *[other] , and guidance says throw out { $discards } things.
  }
power-lost-so-far = Throw out { $items }{ $left ->
    [0] .
   *[other] , and { $left } more.
  }
power-nothing = Nothing in the fridge or freezers is on record.
power-back-title = going through the food after the power cut
power-steps = { $count ->
    [one] One step.
   *[other] { CAP($count) } steps.
  }
power-step = { CAP($at) }, { $verdict ->
    [discard] throw out
    [discard-in-doubt] in doubt, so throw out
    [check] feel for ice or read a thermometer before you keep
    [use-now] use now
   *[refreeze] these may be frozen again:
  } { $items }.
# One food, asked about while a power cut is talked of. What the table says, with its reason.
power-one = { $name }: { $verdict ->
    [keep] { $until ->
        [none] guidance says keep { $many ->
            [yes] them
           *[other] it
          }.
       *[other] holds until about { $until }{ $date ->
            [none] {""}
           *[other] {" "}{ ON($date) }
          }, if the doors stay shut.
      }
    [discard] throw { $many ->
        [yes] them
       *[other] it
      } out, { $reason }.
    [discard-in-doubt] when in doubt, throw { $many ->
        [yes] them
       *[other] it
      } out: { $reason }.
    [use-now] use { $many ->
        [yes] them
       *[other] it
      } now, { $reason }.
    [check] { $until ->
        [none] feel for ice or read a thermometer first: { $reason }.
       *[other] no later than about { $until }{ $date ->
            [none] {""}
           *[other] {" "}{ ON($date) }
          }, and only if a thermometer shows { $many ->
            [yes] them
           *[other] it
          } cold: { $reason }.
      }
   *[other] { $reason }.
  }
power-keep = { $count ->
    [one] Guidance says keep { $items }.
   *[other] Guidance says keep { $count } things{ $left ->
        [0] :
       *[other] , among them
      } { $items }.
  }

# Allergens. What is not recorded is unknown, never free from.
ask-contains = What shall I look up: which food, or which allergen?
ask-who-eats = Who is to eat?
check-the-label = That is what was told to me: the label decides, and for an allergy, so does her clinician.
contains-answer = { $answer ->
    [said-to-contain] Yes, { THE($name) } { IS($name) } said to contain { $allergen }.
    [said-free-from] { CAP(THE($name)) } { IS($name) } said to be free from { $allergen }.
    [usually-contains] It is not recorded, but such food usually contains { $allergen }.
    [conflict] { CAP(THE($name)) } { IS($name) } said to be free from { $allergen }, but such food usually contains it. Check the label.
   *[unknown] Unknown: nobody recorded whether the { $name } { HAS($name) } { $allergen }.
  }
diet-answer = { $answer ->
    [marked] Yes, { THE($name) } { IS($name) } marked { $diet }.
    [contains] No: { THE($name) } { IS($name) } said to contain { $what }.
    [usually] { $what ->
        [none] Hardly: going by its name, the { $name } is meat, poultry or fish.
       *[other] Hardly: nobody marked the { $name } { $diet }, and such food usually contains { $what }.
      }
   *[unknown] Unknown: nobody marked the { $name } { $diet }.
  }
diet-of-person = { $answer ->
    [marked] { CAP(THE($name)) } { IS($name) } marked { $diet }, as { $person } eats.
    [contains] { $person } eats { $diet }, and { THE($name) } { IS($name) } said to contain { $what }.
    [usually] { $what ->
        [none] { $person } eats { $diet }; going by its name, the { $name } is meat, poultry or fish.
       *[other] { $person } eats { $diet }; nobody marked the { $name } so, and such food usually contains { $what }.
      }
   *[unknown] { $person } eats { $diet }; nobody marked the { $name } so.
  }
can-eat-diet = Marked { $diets }, as { $person } eats: { $items }.
can-eat-diet-none = Nothing is marked { $diets }, as { $person } eats.
diet-unmarked = { $count ->
    [one] One other is not marked so.
   *[other] { CAP($count) } others are not marked so.
  }
contains-these = { CAP(THE($name)) } { IS($name) } said to contain { $allergens }.
contains-unknown = Nobody recorded what is in the { $name }.
with-allergen = { $count ->
    [one] One is said to contain { $allergens }: { $items }.
   *[other] { CAP($count) } are said to contain { $allergens }: { $items }.
  }
none-with-allergen = Nothing is recorded as containing { $allergens }.
usually-with = { $count ->
    [one] Such food usually does, not recorded: { $items }.
   *[other] Such foods usually do, not recorded: { $items }.
  }
free-in-doubt = { $count ->
    [one] Said or called free from it, but such food usually is not, so check the label: { $items }.
   *[other] Said or called free from it, but such foods usually are not, so check the labels: { $items }.
  }
must-not-have = Not for { $person }, said to contain { $allergens }: { $items }.
none-must-not = Nothing there is said to contain { $allergens }, which { $person } watches for.
not-by-diet = Not { $diet }, as { $person } eats: { $items }.
none-not-by-diet = Nothing there is known not to be { $diet }, as { $person } eats.
risk-named = For somebody at higher risk, as { $person } is, guidance names: { $items }.
goes-with-unknown = Nobody recorded what goes with { $items }.
listed-with = On the list, such food usually contains { $allergens }: { $items }.
listed-with-none = Nothing on the list usually contains { $allergens }, as far as its name says.
listed-unknown = { $count ->
    [one] Of one other, check the label.
   *[other] Of the other { $count }, check the labels.
  }
past-for-nobody = Past guidance, so for nobody: { $items }.
risk-unknown = { $few ->
    [yes] What guidance says of { $items } I do not know.
   *[no] { CAP($count) } foods are in none of my tables of guidance.
  }
risk-none = { $rest ->
    [yes] Guidance names none of the others for somebody at higher risk, as { $person } is.
   *[no] Guidance names none of these for somebody at higher risk, as { $person } is.
  }
not-recorded-of = { $count ->
    [one] For one, nobody recorded it: { $items }.
   *[other] For { $count }, nobody recorded it: { $items }.
  }
not-recorded-for = { $count ->
    [one] For one, nobody recorded it.
   *[other] For { $count }, nobody recorded it.
  }
said-free-items = { $count ->
    [one] One is said to be free from { $allergens }: { $items }.
   *[other] { CAP($count) } are said to be free from { $allergens }: { $items }.
  }
because-contains = The { $name } is said to contain { $allergens }, which { $person } watches for.
none-said-free = Nothing is recorded as free from { $allergens }.
holds-it = Said to contain it: { $items }.
not-said-either-way = Not said either way: { $items }.
no-allergy-recorded = No allergy is recorded for { $name }, so I cannot tell.
can-eat = { $person } can have, as recorded free from { $allergens }: { $items }.
can-eat-none-sure = Nothing{ $count ->
    [0] {""}
   *[other] {" "}else
  } is said to be free from { $allergens }, so I promise { $person } nothing.
    .short = Nothing is said to be free from { $allergens }.
cannot-eat = Not { $items }.
rest-unknown = { CAP($count) }: not recorded.
    .full = { $count ->
        [one] One may contain { $allergens }: nobody recorded either way.
       *[other] { CAP($count) } may contain { $allergens }: nobody recorded either way.
      }
can-eat-one = { $verdict ->
    [no] No. { CAP(THE($name)) } { IS($name) } said to contain { $allergens }.
    [usually] Rather not: the { $name } usually contains { $allergens }, and nobody recorded it.
    [unknown] Unknown: nobody recorded whether the { $name } { HAS($name) } { $allergens }.
   *[free] As recorded, { THE($name) } { IS($name) } free from { $allergens }.
  }
