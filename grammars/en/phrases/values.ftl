# How days, times, spans and lists are said. Everything is written as it is spoken: words, no digits.
#
# HOW TO WRITE PHRASES (all files here)
# - The message's value is said at the usual length; .short and .full where they differ.
#   An attribute of {""} says nothing at that length.
# - An argument the phrase may do without is chosen on: { $where -> [none] ... *[other] ... }.
#   Left out, it is "none". An argument without a [none] branch must be given.
# - Amounts, counts and days choose by number ([0], [one], *[other]); part of a thing counts as one.
# - A word argument chooses by its spelling: { $state -> [freezer] ... *[other] ... }, with a dash for
#   a space: "air fryer" chooses [air-fryer].
# - Functions: A($x) a/an; THE($x) the, unless it is "Dele's …"; POSS($x) 's; IS($x) WAS($x) HAS($x)
#   DOES($x) is/are …; IT($x) THEM($x) ITS($x) THAT($x) it/they …; MANY($x) "many" or "one", to choose on;
#   OF($amount, $x) "two tubs of stew", "three eggs"; PLURAL($noun); ORDINAL($n); TIMES($n) once/twice;
#   ON($date) with its preposition: yesterday, on Friday, in May; BY($date); AT($time); CAP($x);
#   COUNT($list) how many there are; REGION() "us" or "gb", to choose on.
# - Sentences begin with a capital and get their full stop by themselves.

date-today = today
date-yesterday = yesterday
date-tomorrow = tomorrow
date-week-ago = a week ago today
date-week-ahead = { REGION() ->
    [gb] a week today
   *[us] a week from today
  }
date-last-weekday = last { $weekday }
date-coming-weekday = { $weekday }
    .on = on { $weekday }
date-day-month = { REGION() ->
    [gb] the { $ordinal } of { $month }
   *[us] { $month } { $ordinal }
  }
    .on = { REGION() ->
        [gb] on the { $ordinal } of { $month }
       *[us] on { $month } { $ordinal }
      }
date-day-month-year = { REGION() ->
    [gb] the { $ordinal } of { $month } { $year }
   *[us] { $month } { $ordinal }, { $year }
  }
    .on = { REGION() ->
        [gb] on the { $ordinal } of { $month } { $year }
       *[us] on { $month } { $ordinal }, { $year }
      }
date-this-month = this month
    .by = the end of this month
date-month = { $month }
    .on = in { $month }
    .by = the end of { $month }
date-month-year = { $month } { $year }
    .on = in { $month } { $year }
    .by = the end of { $month } { $year }

# What BY($date) and AT($time) put before.
date-by = by { $date }
time-at = at { $time }

days-none = less than a day
days-one-day = one day
days-day = { $number } days
days-one-week = a week
days-week = { $number } weeks
about-one-week = about a week
about-week = about { $number } weeks
about-one-month = about a month
about-month = about { $number } months
about-one-year = about a year
about-year-and-half = about a year and a half
about-year = about { $number } years

time-noon = noon
time-midnight = midnight
time-hour = { $hour } { part-of-day }
    .short = { $hour } { part-of-day }
time-hour-minute = { $hour } { $minute } { part-of-day }
    .short = { $hour } { $minute }
part-of-day = { $part ->
    [morning] in the morning
    [afternoon] in the afternoon
    [evening] in the evening
   *[night] at night
  }

span-one-second = one second
span-seconds = { $number } seconds
span-one-minute = one minute
span-minutes = { $number } minutes
span-minute-and-half = a minute and a half
span-one-hour = an hour
span-hours = { $number } hours
span-hour-and-half = an hour and a half
span-one-day = one day
span-days = { $number } days
span-and = { $first } and { $second }

span-of = { $high ->
    [none] { $low }
   *[other] { $low } to { $high }
  } { $unit ->
    [hours] { $count ->
        [one] hour
       *[other] hours
      }
    [weeks] { $count ->
        [one] week
       *[other] weeks
      }
    [months] { $count ->
        [one] month
       *[other] months
      }
    [years] { $count ->
        [one] year
       *[other] years
      }
   *[days] { $count ->
        [one] day
       *[other] days
      }
  }

ago-now = just now
ago-span = { $span } ago
ago-ahead = in { $span }
ago-today = { $part ->
    [morning] this morning
    [afternoon] this afternoon
    [evening] this evening
   *[night] tonight
  }
ago-yesterday = { $part ->
    [night] last night
   *[other] yesterday { $part }
  }

temperature = { $degrees } { $count ->
    [one] degree
   *[other] degrees
  } { $scale ->
    [celsius] Celsius
   *[fahrenheit] Fahrenheit
  }

times-one = once
times-two = twice
times-many = { $number } times

# Two names that hold "and" themselves: "rice and beans, and peas and carrots".
list-pair-and = { $first }, and { $second }
list-pair-or = { $first }, or { $second }
list-empty = nothing

# Nouns that look plural and are not, and the other way round. Last words of names, lower case.
nouns-singular = hummus, couscous, asparagus, molasses, swiss, rice, fish, salmon, cod, tuna, trout, shrimp, pork, beef, squash, bass, haggis, swede, schnitzel, watercress, cress, citrus, houmous, mess, floss, gas, glass, moss, moose, mousse, pancetta, hash, mash, radish, news, jus, muesli, quinoa, offal, produce, bread, milk, butter, cheese
nouns-plural = leftovers, greens, oats, grits, chips, fries, scissors, tongs, sprouts, people

# Said when there is an answer and no wording for it: a fault of ours, never the cook's.
phrase-missing = I have an answer, but no words for it. Ask me what changed, or ask another way.

# Sentences that were made before and are said again as they were.
verbatim = { $text }
