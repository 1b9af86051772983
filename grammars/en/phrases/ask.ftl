# Answers to questions put together from their parts.

ask-maker = { $how ->
    [yes] Yes, { $maker } made the { $name }.
    [no] No, { $maker } made the { $name }.
   *[open] { CAP($maker) } made the { $name }.
  }
    .short = { $how ->
    [yes] Yes, { $maker }.
    [no] No, { $maker }.
   *[open] { CAP($maker) }.
  }
ask-maker-unknown = Who made the { $name } is not recorded.
    .short = Not recorded.
ask-keeps-till = { $enough ->
    [yes] { CAP($name) }: within guidance until { $last }, so { $until } is inside that.
   *[no] No: the { $name }, { $by ->
      [label] use by { $last }
     *[guidance] within guidance until { $last }
    }, before { $until }.
  }
    .short = { $enough ->
    [yes] Within guidance until { $last }.
   *[no] No, until { $last }.
  }
# The packet's own day is late enough, and what guidance gives is not: both are said, the packet's first.
ask-label-keeps = By its label yes: { $name }, use by { $printed }. Guidance gives until { $last }.
    .short = Label { $printed }, guidance { $last }.
ask-put = { $count ->
    [one] One thing was
   *[other] { CAP($count) } things were
  } put there { $until ->
    [none] { ON($from) }
   *[other] from { $from } until { $until }
  }.
ask-put-none = Nothing there is on record as put in { $until ->
    [none] { ON($from) }
   *[other] from { $from } until { $until }
  }.
ask-sum = { $total } in all: { $items }.
ask-sum-entry = { OF($amount, $name) }
ask-set = { $count ->
    [one] One: { $items }.
   *[other] { CAP($count) }: { $items }.
  }
ask-set-within = { $count ->
    [one] One within guidance: { $items }.
   *[other] { CAP($count) } within guidance: { $items }.
  }
ask-newest = Newest: { $entry }.
    .short = { CAP($entry) }.
ask-nobody-used = Nobody is recorded as using the { $name }.
ask-used-up = { CAP($used) } of { $first } { $name } used, { $left } left.
    .short = { CAP($used) } of { $first }.
