# Phrases for tests/speech only.
test-found = { THE($item) } { IS($item) } { $where }{ $days ->
    [none] {""}
   *[other] , { $days } old
  }.
    .short = { $where }
    .full = { THE($item) } { IS($item) } { $where }. { CAP(IT($item)) } { WAS($item) } made { ON($made) }.
test-left = { OF($amount, $item) } { $amount ->
    [one] is
   *[other] are
  } left.
test-where = in the { $state ->
    [freezer] cold
   *[other] { $state }
  }.
test-extra = You may also freeze it.
    .short = {""}
test-optional = Made{ $who ->
    [none] {""}
   *[other] {" "}by { $who }
  }.
test-digits = Heat it for 3 minutes at 800watts.
test-words = { $a } and { $b }
test-a = { A($x) }
test-the = { THE($x) }
test-poss = { POSS($x) } soup
test-is = { $x } { IS($x) } here, { IT($x) } { HAS($x) } { THAT($x) }
test-on = { ON($day) }
test-by = { BY($day) }
test-at = { AT($time) }
test-of = { OF($amount, $item) }
test-times = { TIMES($n) }
test-plural = { $n } { PLURAL($noun, $n) }
test-count = { COUNT($list) ->
    [0] nobody
    [one] one person
   *[other] { COUNT($list) } people
  }
test-nested = Take { $place }.
test-ordinal = the { ORDINAL($n) } one
test-region = { REGION() ->
    [gb] tin
   *[us] can
  }
test-method = { $method ->
    [air-fryer] in hot air
   *[other] { $method }
  }.
