# What published guidance says, one phrase for each code of the safety room.
# Nothing here says "safe": it reports what guidance gives, and when in doubt, throw it out.

span-range = { $low } to { $high } { $unit }
span-single = { $high ->
    [one] { $unit ->
        [hours] one hour
        [days] one day
        [weeks] one week
        [months] one month
       *[years] one year
      }
   *[other] { $high } { $unit }
  }

source-cited = Source: { $agency }, { $document }{ $year ->
    [none] {""}
   *[other] , { $year }
  }{ $section ->
    [none] {""}
   *[other] , { $section }
  }.
source-year = { $year }
source-memory = That figure is from memory and was not looked up.
source-practice = That is common practice, without a published source.

# Verdicts: the answer to "is it still good".
verdict-fine = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }within guidance{ $last ->
    [none] {""}
   *[other] {" "}until { $last }
  }.
verdict-use-soon = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }use { $many ->
    [yes] them
   *[no] it
  } { $last ->
    [none] soon
   *[other] by { $last }
  }.
verdict-last-day = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }today is the last day by guidance.
verdict-throw-out = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }past guidance, so throw { $many ->
    [yes] them
   *[no] it
  } out.
verdict-past-best-quality = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }past { $many ->
    [yes] their
   *[no] its
  } best for taste and texture.
verdict-cook-thoroughly = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }use soon, cooked through.
verdict-refrigerate-now = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }put { $many ->
    [yes] them
   *[no] it
  } in the fridge now.
verdict-no-figure = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }guidance gives no figure, so go by the label.
verdict-unknown = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }I cannot say, no date is recorded. When in doubt, throw { $many ->
    [yes] them
   *[no] it
  } out.
verdict-how-long = { $name ->
    [none] {""}
   *[other] { CAP($name) }:{" "}
  }guidance gives no figure for that.

# Reasons.
safety-within-guidance = { CAP($age) } of { $span } used.
safety-use-up = Guidance gives { $span }; { $age } used.
safety-last-day = Guidance gives { $span }, and today is the last of them.
safety-over-limit = Guidance gives { $span }; it is { $over } over.
safety-over-limit-hours = It has been { $hours } hours; guidance allows { $limit }.
safety-keeps = { CAP($food) }{ $type ->
    [none] {""}
   *[other] , { $type }
  }: { $span }.
safety-not-refrigerated-figure = The chart gives no fridge time for it.
safety-not-for-freezing = The chart says not to freeze it.
safety-frozen-quality = Best before the end of { $to }, for taste; frozen solid, it keeps.
safety-past-quality = Its best was over by { $to }. That is about taste and texture.
safety-frozen-keeps = Food kept frozen all along keeps; freezer times are for quality only.
safety-frozen-unknown-date = When it was frozen is not recorded.
safety-use-by-passed = Its use-by date was { $day }.
safety-use-by-today = Its use-by date is today.
safety-use-by-sooner = Its use-by date is { $day }.
safety-use-by-quality = The printed date { $day } is the maker's, mostly about quality.
safety-best-before-passed = Its best-before date was { $day }, which is about quality.
safety-best-before-eggs = Eggs may be used up to two days after their best-before date, cooked through.
safety-within-days-of-opening = The label says { $days } after opening, so until { $day }.
safety-days-used-before-freezing = { CAP($days) } in the fridge count as well.
safety-clock-stopped = The days in the freezer do not count.
safety-thawed-undated = It has thawed, and when it was made is not recorded.
safety-thawed-limit = Thawed food is to be used within { $hours } hours.
safety-after-thaw = After thawing, guidance gives { $span }.
safety-over-before-freezing = It was { $over } over before it was frozen.
safety-refrozen = It was frozen again after thawing.
safety-reheated-times = It was reheated { TIMES($times) }.
safety-reheat-once = United Kingdom guidance says to reheat once only.
safety-left-out-over = It was out { $minutes }; guidance allows { $limit }.
safety-left-out-within = It has been out { $minutes } of { $limit }.
safety-left-out-unknown = How long it was out is not known; guidance allows { $limit }.
safety-left-out-hot = Above ninety degrees Fahrenheit, only one hour is allowed.
safety-room-temperature = It is kept where it is not cold.
safety-date-unknown = No date is recorded for it.
safety-at-least-days = It has been here at least { $days }.
safety-future-date = Its date, { $day }, is still to come; please check it.
safety-label-decides = Go by its label.
safety-opened-label-decides = It is open, so go by what the label says of opening.
safety-shelf-stable = It keeps at room temperature.
safety-produce-no-figure = There is no figure for fresh produce: feel it, and go by its state.
safety-no-uk-figure = The Food Standards Agency gives no figure for it.
safety-general-answer = { CAP($name) } is in no table, so this is the general figure.
safety-raw-assumed = I took it as raw, which is the shorter time.
safety-older-guidance = That figure is from an older chart.
safety-guide-only = That figure is from a leaflet, not a government chart.
safety-memory-only = That figure is from memory and was not looked up.
safety-stricter-region = That is the stricter of United States and United Kingdom guidance.
safety-shorter-of-two = Charts differ, and this is the shorter time.
safety-earliest-part = Its oldest part counts.
safety-home-canned = It is home canned: if you are not sure how it was done, throw it out.
safety-garlic-in-oil = Garlic in oil keeps only a few days, and only in the fridge.
safety-infant-food = Food for a baby has its own, shorter rules.
safety-days-left = { CAP($days) } left.
safety-hazard-high = It is a food that makes people ill soonest.
safety-opened-already = It is open already.
safety-lots-of-it = There is a lot of it: { $amount }.
safety-energy-equal = The time is reckoned so that the food gets the same energy.
safety-first-check = Check it early: ovens differ.
safety-ratio-capped = The ovens differ too much to reckon further.
safety-watts-unknown = Your microwave's watts are not recorded, so the time is not changed.
safety-printed-column = That time is printed for your oven.
safety-doubled-portions = More portions take longer.
safety-portions-beyond = For that many portions I have no figure: heat and check.
safety-defrost-unscaled = Defrosting times are not reckoned over.
safety-not-yet-hot = { CAP($reached) } is not hot enough; guidance says { $wanted }.
safety-hot-enough = That is hot enough by guidance.
safety-rest-more = Let it rest { $minutes } minutes more.
safety-held-too-short = Hold it longer: { $wanted } seconds in all.
safety-boil-wanted = It should come to a rolling boil.
safety-look-unusable = The usual sign is to be looked at, so use a talking thermometer.
safety-fridge-too-warm = That is too warm for a fridge.
safety-fridge-in-range = That is cold enough for a fridge.
safety-cooled-in-time = It cooled in time.
safety-cooled-too-slowly = It cooled too slowly: throw it out.

# Cautions.
caution-look-and-smell = Looks and smell do not tell whether it is spoiled.
caution-do-not-taste = Do not taste it to find out.
caution-botulism-home-canned = Home-canned food that was not done right can poison without any sign.
caution-botulism-garlic-oil = Garlic in oil can poison without any sign.
caution-botulism-foil-potato = A baked potato left in foil can poison without any sign: unwrap it.
caution-damaged-can = Throw out a can that is swollen, leaking or deeply dented.
caution-at-risk-deli = For someone at risk, heat cold cuts until steaming hot.
caution-at-risk-soft-cheese = Someone at risk should not eat soft cheese made from raw milk.
caution-at-risk-queso-fresco = Someone at risk should not eat fresh soft cheese unless heated.
caution-at-risk-deli-salad = Someone at risk should not eat deli salads made in a shop.
caution-at-risk-sprouts = Someone at risk should not eat raw sprouts.
caution-at-risk-fermented-sausage = For someone at risk, heat fermented sausage until steaming hot.
caution-at-risk-smoked-fish = Someone at risk should eat smoked fish only cooked.
caution-at-risk-pate = Someone at risk should not eat chilled pâté.
caution-at-risk-raw-milk = Someone at risk should not drink raw milk.
caution-at-risk-honey = No honey for a baby under one year.
caution-at-risk-general = Somebody who eats here is at higher risk, so take no chances.
caution-ask-clinician = Ask her clinician.
caution-local-authority = Follow what the local food authority says.
caution-infant-no-microwave = Do not warm a baby's milk in the microwave.
caution-infant-use-by = Never use infant formula after its date.
caution-allergen = It contains { $allergens }.
caution-allergen-usual = Such food usually contains { $allergens }.
caution-allergens-unknown = Its allergens are not recorded.
caution-recorded = Careful: { $words }.
caution-spicy = It is spicy: { $words }.
caution-hot-steam = Steam will come out, so open it away from you.
caution-hot-dish = The dish will be hot: use mitts.
caution-hot-oil = The oil may spit: keep your face and arms away.
caution-superheated = Liquid can boil up when moved, so let it stand first.
caution-raw-juices = Keep its juices off other food, and wash your hands.
caution-follow-label = Go by its label.
caution-rice = Rice is to be cooled and chilled quickly; when in doubt, throw it out.
caution-mould = If it is mouldy or slimy, throw it out.

# What a food was taken for.
match-taken-as = I took it as { $food }.
match-raw-assumed = I took it as raw.
match-cooked-assumed = I took it as cooked.
match-not-in-table = It is in no table.
match-several-fit = Several fit, and I took the shortest time.

# Steps of heating.
step-own-words = { $words }
step-move-to-dish = Move it to a dish that is right for the microwave.
step-break-up = Break it up and spread it evenly.
step-cover-vent = Cover it, and leave a corner open for steam.
step-cover-foil = Cover it with foil.
step-set-microwave = Microwave it { $seconds ->
    [none] {""}
   *[other] for { $seconds }
  }{ $watts ->
    [none] {""}
   *[other] , at { $watts } watts
  }.
step-set-microwave-short = Microwave it a minute at a time.
step-stir = Stir it, from the edge to the middle.
step-turn = Turn it over.
step-heat-again = Heat it again{ $seconds ->
    [none] {""}
   *[other] {" "}for { $seconds }
  }.
step-stand = Let it stand, covered{ $seconds ->
    [none] {""}
   *[other] , { $seconds }
  }.
step-probe = Put your talking thermometer in several spots. Every one should say { $temperature }.
step-probe-hold = Put your talking thermometer in several spots. It should say { $temperature } and stay there { $hold }.
step-more-time = Not there yet: heat it a minute more and check again.
step-preheat = Heat the oven to { $temperature }.
step-into-oven = Put it in the oven{ $seconds ->
    [none] {""}
   *[other] {" "}for { $seconds }
  }.
step-into-air-fryer = Put it in the air fryer{ $seconds ->
    [none] {""}
   *[other] {" "}for { $seconds }
  }.
step-shake-basket = Shake the basket.
step-into-pan = Put it in a pan.
step-add-splash = Add a splash of water.
step-bring-to-boil = Bring it to a rolling boil: listen for steady, fast bubbling.
step-simmer = Let it simmer, stirring.
step-into-steamer = Put it in the steamer.
step-into-toaster = Put it in the toaster.
step-serve = It is ready.
step-thaw-first = Thaw it first, in the fridge.
step-keep-doors-shut = Keep the fridge and freezer doors shut.
step-note-time = Note when the power went: { $time ->
    [none] tell me the time
   *[other] { $time }
  }.
step-move-perishables = Move what spoils to a cooler with ice if it lasts longer than four hours.
step-read-thermometer = Read the thermometer in the fridge and in the freezer.
step-feel-ice-crystals = Feel each frozen food: is there ice in it?
step-go-item-by-item = Go through the food one by one.
step-never-taste = Never taste food to find out.
step-raw-juice-discard = Throw out anything that raw juices have dripped on.
step-no-snow = Do not put food out in the snow.
step-dry-ice = Dry ice keeps a freezer cold: wear gloves and keep a window open.
step-when-in-doubt = When in doubt, throw it out.
step-clean-up = Wash the fridge and your hands.

# What will not be heated, and why.
refusal-past-guidance = By guidance it is to be thrown out, so I do not tell you how to heat it.
refusal-reheated-already = It was reheated already, and guidance says once only. Throw out what is left.
refusal-takeaway-rice = Rice from a takeaway is not to be reheated.
refusal-slow-cooker = A slow cooker heats too slowly for reheating. Heat it in a pan or the microwave first.
refusal-no-microwave-for-infants = Do not use the microwave for a baby's milk.
refusal-no-microwave-on-label = Its label says no microwave.
refusal-method-unknown = I do not know that way of heating. There are microwave, oven, hob, air fryer and steamer.
refusal-not-for-reheating = That is eaten as it is.
refusal-age-unknown = Its age is not recorded. When in doubt, throw it out.

# Thawing.
thaw-start-fridge = Move it to the fridge now.
thaw-low-shelf-on-tray = Put it on the lowest shelf, on a tray, so that nothing drips on other food.
thaw-start-cold-water = Start it in cold water.
thaw-change-water = Change the water every thirty minutes.
thaw-leak-proof-bag = Put it in a bag that does not leak.
thaw-cook-at-once = Cook it as soon as it has thawed.
thaw-keeps-days-after = Thawed in the fridge, it keeps a day or two more before cooking.
thaw-check-thawed = Feel that no ice is left in the middle.
thaw-microwave-book = In the microwave, follow its book, and cook at once.
thaw-cook-from-frozen = It can be cooked from frozen: about half as long again.
thaw-never-on-counter = Never thaw on the counter or in hot water.
thaw-weight-unknown = Its weight is not recorded, so this is for a small piece.
thaw-refreeze-raw-ok = Thawed in the fridge, it may be frozen again.
thaw-cook-before-refreezing = Cook it before freezing it again.
thaw-use-within-day = Use it within twenty-four hours of thawing.

# After a power cut.
power-door-shut-within-hours = the doors were shut and the hours are not over
power-still-cold = it is still cold enough
power-table-keep = the table says keep
power-table-discard = the table says discard
power-table-refreeze = the table says it may be frozen again
power-table-refreeze-loss = it may be frozen again, with some loss of quality
power-hours-not-over = its hours are not over
power-hours-over = its hours are over
power-check-signs = throw it out at any mould, yeasty smell or slime
power-past-hours-check = the hours are over, so it must be checked
power-not-in-table = it is in no table
power-unknown-temperature = nobody knows how warm it got
power-not-affected = it keeps at room temperature
