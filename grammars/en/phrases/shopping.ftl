# The list to buy.

ask-buy = What shall go on the list?
ask-unbuy = Take what off the list?
on-the-list = { CAP($items) } { IS($items) } on the list.
    .short = { CAP($items) }, listed.
    .full = { CAP($items) } { IS($items) } on the list. It holds { $count ->
    [one] one thing
   *[other] { $count } things
  } now.
already-on-list = { CAP($items) } { WAS($items) } on it already.
confirm-buy = Put { $items } on the list? Yes or no.
ask-unbuy-which = Which of them shall I take off: { $items }?
listed-under = { CAP($items) } { IS($items) } on the list under { $section }.
list-number = { $count ->
    [0] Nothing is on the list.
    [one] One thing is on the list.
   *[other] { CAP($count) } things are on the list.
  }
list-last = { CAP($items) } went on last.
list-under = Under { $section }: { $items }.
list-none-under = Nothing on the list is under { $section }.
list-no-section = { $count ->
    [one] One has no section: { $items }.
   *[other] { CAP($count) } have no section: { $items }.
  }
not-on-list = No { $items } on the list.
taken-off-list = { CAP($items) } { IS($items) } off the list.
    .full = { CAP($items) } { IS($items) } off the list. { $count ->
    [0] It is empty now.
    [one] One thing is left.
   *[other] { CAP($count) } are left.
  }
confirm-unbuy = Take { $items } off the list? Yes or no.
list-empty-now = The list is empty.
nothing-low = Nothing on record is nearly out.
list-cleared = The list is empty now. Say undo to have it back.
confirm-clear-list = Clear the whole list, { $count ->
    [one] one thing
   *[other] { $count } things
  }? Yes or no.
still-to-buy = { CAP($items) } { IS($items) } still on the list.
offer-missing = Put { $items } on the list?
got-nothing = Then nothing comes off the list.
got-these = { $count ->
    [one] { CAP($items) }, bought.
   *[other] { CAP($count) } things bought.
  }
    .full = { CAP($items) }, bought.
left-on-list = { $count ->
    [one] Still to buy: { $items }.
   *[other] { CAP($count) } still to buy: { $items }.
  }
confirm-got = Take { $count ->
    [one] one thing
   *[other] { $count } things
  } off the list as bought? Yes or no.
offer-shop = Shall we put it away now?
yes-on-list = Yes, { $items } { IS($items) } on the list.
list-count = { $count } things.
list-section = { $section }: { $items }
list-others = others: { $items }
list-holds = { $count ->
    [one] One thing: { $items }.
   *[other] { CAP($count) } things: { $items }.
  }
line-whole = { $item }{ $shop ->
    [none] {""}
   *[other] {" "}from the { $shop }
  }{ $person ->
    [none] {""}
   *[other] {" "}for { $person }
  }{ $note ->
    [none] {""}
   *[other] , { $note }
  }
line-amount = { CAP($item) }, on the list.
line-no-amount = No amount was given for { THE($name) }.
line-since = { CAP($name) } went on the list { $when }.
line-for = { CAP($name) } { IS($name) } for { $person }.
line-for-nobody = Nobody was named for { THE($name) }.
line-shop = { CAP($name) }: from the { $shop }.
line-section = No shop was given. { CAP($name) } { IS($name) } under { $section }.
line-no-shop = No shop was given for { THE($name) }.
line-kind = { CAP($item) }.
line-no-kind = Nothing was said of which kind of { $name }.
lines-for = For { $person }: { $items }.
lines-for-nobody = Nothing on the list for { $person }.
lines-of-kind = { $count ->
    [one] One thing: { $items }.
   *[other] { CAP($count) } things: { $items }.
  }
lines-no-food = No food on the list.
lines-only-food = Only food is on the list.
enough-here = There { IS($amount) } { OF($amount, $name) } here, so nothing goes on the list.
got-some = { CAP($got) }, bought. Still to buy: { $left }.
list-no-watch = Nothing is on record that { $person } must not have.
list-not-for = { CAP($items) }, for { $person }: { $allergens }.
list-none-against = By their names, nothing on the list is against what { $person } watches for.
list-by-name = That is by name: read the labels.
