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
  }guidance gives no figure.
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
safety-within-guidance = { $age } of { $span } used.
safety-use-up = guidance gives { $span }; { $age } used.
safety-last-day = guidance gives { $span }, and today is the last of them.
safety-over-limit = guidance gives { $span }; it is { $over } over.
safety-over-limit-hours = it has been { $hours } hours; guidance allows { $limit }.
safety-keeps = { $food }{ $type ->
    [none] {""}
   *[other] , { $type }
  }: { $span }.
safety-not-for-freezing = the chart says not to freeze it.
safety-frozen-quality = best for taste until { $to }; kept frozen, it keeps.
safety-past-quality = its best was until { $to }; kept frozen, it keeps.
safety-frozen-keeps = food kept frozen all along keeps; freezer times are for quality only.
safety-frozen-unknown-date = when it was frozen is not recorded.
safety-use-by-passed = its use-by date was { $day }.
safety-use-by-today = its use-by date is today.
safety-use-by-sooner = its use-by date is { $day }.
safety-use-by-quality = the printed date { $day } is the maker's, mostly about quality.
safety-best-before-passed = its best-before date was { $day }, which is about quality.
safety-best-before-eggs = eggs may be used up to two days after their best-before date, cooked through.
safety-within-days-of-opening = the label says { $days } after opening, so until { $day }.
safety-days-used-before-freezing = { $days } in the fridge count as well.
safety-clock-stopped = the days in the freezer do not count.
safety-thawed-undated = it has thawed, and when it was made is not recorded.
safety-after-thaw = after thawing, guidance gives { $span }.
safety-over-before-freezing = it was { $over } over before it was frozen.
safety-refrozen = it was frozen again after thawing.
safety-reheated-times = it was reheated { TIMES($times) }.
safety-reheat-once = United Kingdom guidance says to reheat once only.
safety-left-out-over = it was out { $minutes }; guidance allows { $limit }.
safety-left-out-within = it has been out { $minutes } of { $limit }.
safety-left-out-unknown = how long it was out is not known; guidance allows { $limit }.
safety-left-out-long = it was out longer than guidance allows.
safety-power-lost = it got too warm in a power cut, and that does not pass.
safety-power-doubtful = it went through a power cut, and nobody felt or measured it since.
safety-power-holds = the power is out; behind its shut door it stays cold until about { $until }.
safety-power-out = the power is out, and nobody knows how cold it is.
safety-left-out-hot = above ninety degrees Fahrenheit, only one hour is allowed.
safety-room-temperature = it is kept where it is not cold.
safety-pantry-quality = guidance gives { $span } on a shelf, for best quality.
safety-date-unknown = no date is recorded for it.
safety-at-least-days = it has been here at least { $days }.
safety-future-date = its date, { $day }, is still to come; please check it.
safety-label-decides = go by its label.
safety-opened-label-decides = it is open, so go by what the label says of opening.
safety-shelf-stable = it keeps at room temperature.
safety-sealed-only = only a sealed tin or carton keeps there, so throw out anything else.
safety-produce-no-figure = it is fresh produce: feel it, and go by its state.
safety-no-uk-figure = the Food Standards Agency gives no figure for it.
safety-general-answer = no table has { $name }, so I go by leftovers in general.
safety-raw-assumed = I took it as raw, which is the shorter time.
safety-older-guidance = that figure is from an older chart.
safety-guide-only = that figure is from a leaflet, not a government chart.
safety-memory-only = that figure is from memory and was not looked up.
safety-stricter-region = that is the stricter of United States and United Kingdom guidance.
safety-other-table = { $table ->
    [chart] The cold food chart
   *[data] The storage data
  } says { $span }.
safety-shorter-of-two = charts differ, and this is the shorter time.
safety-earliest-part = its oldest part counts.
safety-home-canned = it is home canned: if you are not sure how it was done, throw it out.
safety-infant-food = food for a baby has its own, shorter rules.
safety-days-left = { $days } left.
safety-hazard-high = it is a food that makes people ill soonest.
safety-opened-already = it is open already.
safety-lots-of-it = there is a lot of it: { $amount }.
safety-energy-equal = the time is reckoned so that the food gets the same energy.
safety-first-check = check it early: ovens differ.
safety-ratio-capped = the ovens differ too much to reckon further.
safety-watts-unknown = the watts are not all recorded, so I cannot reckon the time: heat it a minute at a time.
safety-printed-column = that time is printed for your oven.
safety-doubled-portions = more portions take longer.
safety-portions-beyond = for that many portions I have no figure: heat and check.
safety-not-yet-hot = { CAP($reached) } is not hot enough; guidance says { $wanted }.
safety-hot-enough = that is hot enough by guidance.
safety-rest-more = let it rest { $minutes ->
    [one] one minute
   *[other] { $minutes } minutes
  } more.
safety-held-too-short = hold it longer: { $wanted } seconds in all.
safety-boil-wanted = it should come to a rolling boil.
safety-look-unusable = the usual sign is to be looked at, so use a talking thermometer.
safety-fridge-too-warm = that is too warm for a fridge.
safety-fridge-in-range = that is cold enough for a fridge.
safety-cooled-in-time = it cooled in time.
safety-cooled-too-slowly = it cooled too slowly: throw it out.

# Cautions.
caution-look-and-smell = looks and smell do not tell whether it is spoiled.
caution-do-not-taste = do not taste it to find out.
caution-botulism-home-canned = home-canned food that was not done right can poison without any sign.
caution-botulism-garlic-oil = garlic in oil can poison without any sign.
caution-botulism-foil-potato = A baked potato left in foil can poison without any sign: unwrap it.
caution-damaged-can = throw out a can that is swollen, leaking or deeply dented.
caution-at-risk-deli = for someone at risk, heat cold cuts until steaming hot.
caution-at-risk-soft-cheese = someone at risk should not eat soft cheese unless it is from pasteurized milk.
caution-at-risk-queso-fresco = someone at risk should not eat fresh soft cheese, pasteurized or not.
caution-at-risk-deli-salad = someone at risk should not eat deli salads made in a shop.
caution-at-risk-sprouts = someone at risk should not eat sprouts unless they are cooked.
caution-at-risk-fermented-sausage = for someone at risk, heat fermented sausage until steaming hot.
caution-at-risk-smoked-fish = someone at risk should eat smoked fish only cooked.
caution-at-risk-pate = someone at risk should not eat chilled pâté.
caution-at-risk-raw-milk = someone at risk should not drink raw milk.
caution-at-risk-raw-eggs = for someone at risk, cook eggs until they are firm all through.
caution-at-risk-raw-seafood = someone at risk should not eat fish or shellfish raw.
caution-raw-dough = nobody should taste raw dough or batter: bake it first.
caution-at-risk-honey = no honey for a baby under one year.
caution-at-risk-general = somebody who eats here is at higher risk, so take no chances.
caution-ask-clinician = ask her clinician.
caution-infant-no-microwave = do not warm a baby's milk in the microwave.
caution-infant-use-by = never use infant formula after its date.
caution-allergen = it contains { $allergens }.
caution-allergen-usual = such food usually contains { $allergens }.
caution-allergens-unknown = its allergens are not recorded.
caution-recorded = careful: { $words }.
caution-spicy = it is spicy: { $words }.
caution-hot-steam = steam will come out, so open it away from you.
caution-hot-dish = the dish will be hot: use mitts.
caution-hot-oil = the oil may spit: keep your face and arms away.
caution-superheated = liquid can boil up when moved, so let it stand first.
caution-follow-label = go by its label.
caution-rice = rice is to be cooled and chilled quickly; when in doubt, throw it out.
caution-mould = if it is mouldy or slimy, throw it out.

# What a food was taken for.
match-taken-as = I took it as { $food }.
match-raw-assumed = I took it as raw.
match-cooked-assumed = I took it as cooked.
match-not-in-table = it is in no table.
match-several-fit = several fit, and I took the shortest time.

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
step-probe = Put your talking thermometer in several spots; each should say { $temperature }.
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
refusal-no-microwave-for-infants = Stand a baby's milk in warm water: do not use the microwave, and do not boil it.
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
power-table-keep = guidance says keep
power-table-discard = guidance says it does not keep without cold
power-table-refreeze = guidance says it may be frozen again
power-table-refreeze-loss = it may be frozen again, with some loss of quality
power-hours-not-over = its hours are not over
power-hours-over = its hours are over
power-check-signs = throw it out at any mould, yeasty smell or slime
power-past-hours-check = the hours are over, so it must be checked
power-not-in-table = it is in no table
power-unknown-temperature = nobody knows how warm it got
power-opened-within-hours = the door was opened
power-not-affected = it keeps at room temperature

# Somebody in trouble: whom to call comes first, and nothing is judged here.
urgent-emergency = Call emergency services now, { $number ->
    [nine-one-one] nine one one
    [nine-nine-nine] nine nine nine
   *[other] on their number
  }. Swelling or trouble with breathing cannot wait.
    .short = Call emergency services now, { $number ->
    [nine-one-one] nine one one
    [nine-nine-nine] nine nine nine
   *[other] on their number
  }.
urgent-ill = Ask a doctor or a poison help line now, and keep the food for them. If it is hard to breathe, to swallow or to stay awake, call emergency services, { $number ->
    [nine-one-one] nine one one
    [nine-nine-nine] nine nine nine
   *[other] on their number
  }.
urgent-medicine = That is for a pharmacist or a doctor: ask them before you eat it. I know nothing of medicines.
urgent-illness = That is for a doctor or a dietitian: ask them. I can only tell what is recorded of a food.
urgent-not-a-doctor = I keep the record of a kitchen, and am no help to a body.
urgent-recorded = { CAP(THE($name)) } { IS($name) } said to contain { $allergens }.

# Whatever the date says.
danger-container = Do not taste it: throw it out, closed as it is. A container that bulges, leaks or spurts can poison without any sign.
    .short = Do not taste it: throw it out.
danger-nameless = Do not taste it: throw it out. What is in it and how it was done, nobody can tell.
    .short = Do not taste it: throw it out.
danger-dented = If the dent is deep or on a seam, do not taste it: throw it out. When in doubt, throw it out.
danger-mould = Do not taste it or smell at it: throw it out. When in doubt, throw it out.
    .short = Do not taste it: throw it out.
danger-mould-cut = A whole block of hard cheese may be cut, { $inches ->
    [one] an inch
   *[other] { $inches } inches
  } or more around and below the mould, the knife kept out of it. Sliced, grated or soft: throw it out. In doubt, throw it out.
danger-smell = Do not taste it: throw it out. A bad smell is reason enough; a good one would prove nothing.
    .short = Do not taste it: throw it out.
danger-sniff = Looks and smell do not tell what makes people ill. Go by how long and how cold it was kept; when in doubt, throw it out.
    .short = Looks and smell do not tell. When in doubt, throw it out.
danger-taste = Do not taste it to find out. Go by how long and how cold it was kept; when in doubt, throw it out.
    .short = Do not taste it to find out.
allergy-not-taken = I did not take that in: who must not have { $allergens }? Say, for example, Jack is allergic to { $allergens }.
confirm-said-free = Did its label, or whoever made it, say that { THE($name) } { IS($name) } free from { $allergens }? Yes or no.

match-riskiest-part = the part that spoils soonest decides.
# One question of guidance, with what was told.
guidance-elsewhere = I cannot say: how cold the { $place } is I do not know. When in doubt, throw it out.
guidance-if-fridge = In the fridge it would be { $span }.
guidance-sell-by = A sell-by date is for the shop.
guidance-claim = { CAP($claim) } means { $strict ->
    [yes] below
   *[no] at most
  } { $limit } { $unit ->
    [mg] milligrams
    [g] grams
   *[ppm] parts per million
  } of { $nutrient } in { $per ->
    [serving] a usual serving
    [food] the food
    [grams] a hundred grams
   *[other] a hundred grams or milliliters
  }.
guidance-claim-gluten-free = That is not the same as free from wheat: read its Contains line.
guidance-claim-unsalted = Unsalted means that no salt was added. It does not mean sodium free: the food has its own.
guidance-claim-unknown = I have no rule for that claim. Go by the figures on the label.
guidance-label-useBy-safety = Use by is a safety date: do not eat, cook or freeze it after. Looks and smell do not tell.
guidance-label-useBy-quality = Use by is the last day of best quality; for infant formula it is a safety date. I count it as the last day.
guidance-label-bestBefore-quality = Best before is about quality and taste. It is no safety date.
guidance-label-sellBy-quality = Sell by is for the shop. It is no safety date.
guidance-cook-now = Thawed so, the { $name } { IS($name) } to be cooked at once, not kept.
guidance-unheard = I did not get “{ $words }”, so I give no verdict.
guidance-cool = The trade cools cooked food { $stages } in all.
guidance-chill-hot = Straight into the fridge, hot as it is: in shallow dishes, within { $time }. Guidance asks no cooling first.
    .short = Straight in, in shallow dishes, within { $time }.
guidance-slow-cooker-frozen = No: thaw it first. From frozen, a slow cooker warms it too slowly.
guidance-feed-limit = Within { $limit } { $of ->
    [human] after the feed
   *[formula] from when the feed began
  }, guidance says; then throw out what is left.
danger-frost = Dry or frosty patches are of taste only: cut them off. Kept frozen all along, it is not lost by them.
    .short = That is of taste only: cut it off.
guidance-code-date = { $kind ->
    [bestBefore] Best before
    [sellBy] Sell by
    [expiry] Use by
    [production] Made on
    [packaging] Packed on
   *[due] Due on
  } { $day }.
guidance-code-wrong = The code gives a day that is none: a digit may be wrong.
guidance-code-none = I find no date in those digits. One begins with seventeen for use by, or fifteen for best before.
guidance-cool-stage = to { $to } within { $time }
guidance-cool-late = That is too slow: throw it out.
guidance-cool-so-far = In time so far.
guidance-roast = { $method ->
    [oven] In the oven
    [grill] Grilled
    [braise] Braised
    [simmer] Simmered, covered with water
    [slow-cooker] In the slow cooker
   *[skillet] In the pan
  }{ $oven ->
    [none] {""}
   *[other] {" "}at { $oven }
  }, { $time }{ $per ->
    [pound] {" "}a pound
   *[all] {""}
  }.
guidance-roast-span = { $high ->
    [none] about { $low }
   *[other] { $low } to { $high }
  }
guidance-roast-weights = That is published for { $from } to { $to } pounds.
guidance-roast-done = Done at { $temperature } inside.
guidance-power-hours = With the doors shut, a fridge holds { $fridge }, a full freezer { $full }, a half full one { $half }.
guidance-power-until = With its door shut, the fridge stays cold until about { $until }.
guidance-power-past = The fridge had been without power too long by { $until }: throw out what spoils.
guidance-refreeze-yes = Yes, guidance says { $name } thawed in the fridge may be frozen again.
guidance-refreeze-cook-first = Cook the { $name } first: only then may it be frozen again.
guidance-refreeze-no = No, do not freeze the { $name } again.
guidance-refreeze-unknown = How was the { $name } thawed: in the fridge, in cold water, in the microwave, or left out? In doubt, do not freeze it again.
guidance-probe-yes = Yes, that is hot enough by guidance.
    .short = Hot enough.
guidance-probe-no = Not yet.
guidance-fridge-warm = Too warm for a fridge: guidance says { $wanted } or colder.
guidance-fridge-lost = What spoils was too warm for two hours or more: throw it out.
guidance-fridge-cold = Cold enough for a fridge: guidance says { $wanted } or colder.
guidance-freezer-warm = Too warm for a freezer: guidance says { $wanted } or colder.
guidance-freezer-cold = Cold enough for a freezer: guidance says { $wanted } or colder.
guidance-power-since = How long was the power out?
guidance-thaw-fridge = In the fridge, { $low }{ $high ->
    [none] {""}
   *[other] {" "}to { $high }
  }.
guidance-thaw-water = In cold water, about { $time }, changed every thirty minutes, and cooked at once.
guidance-thaw-weight = That is for one pound.
guidance-boil = If you doubt how it was canned, throw it out. Guidance says boil it { $time } before tasting, and a minute more for each thousand feet up.
guidance-boil-there = If you doubt how it was canned, throw it out. That high up, guidance says boil it { $time } before tasting.
guidance-mix-formula = Go by the formula's label or a nurse: I have no figure for mixing it. Do not boil it once mixed.
guidance-warm-infant = Stand the bottle in warm water, and do not boil it.
guidance-feed-over = No: guidance says throw out what is left { $limit } after the feed began.
guidance-bottle-over = No, throw it out. Guidance gives a bottle of formula two hours from when it was made up, and one from when the feed began.
guidance-bottle-until = Until { $by }{ $begun ->
    [yes] , guidance says
   *[no] , guidance says, or an hour after the feed began where that is sooner
  }; then throw it out.
guidance-feed-within = Up to { $limit } after the feed began, guidance says; then throw it out.
