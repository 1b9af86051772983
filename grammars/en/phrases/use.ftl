# Using up, taking some.

ask-finish = What is used up?
ask-take = What did you take?
ask-how-much = How much of the { $name } did you take, or how much is left?
ask-how-much-again = Say an amount, such as two portions, half, or all of it.
confirm-finished = Mark the { $name } { $at } as used up? Yes or no.
    .short = { CAP($name) }, used up?
confirm-thrown-out = Mark the { $name } { $at } as thrown out? Yes or no.
    .short = { CAP($name) }, thrown out?
confirm-given-away = Mark the { $name } { $at } as given away? Yes or no.
    .short = { CAP($name) }, given away?
confirm-finished-all = Mark { $count ->
    [2] both
   *[other] all { $count }
  } as used up: { $name }? Yes or no.
confirm-thrown-out-all = Mark { $count ->
    [2] both
   *[other] all { $count }
  } as thrown out: { $name }? Yes or no.
confirm-given-away-all = Mark { $count ->
    [2] both
   *[other] all { $count }
  } as given away: { $name }? Yes or no.
confirm-take = Take { OF($amount, $name) } off? Yes or no.
confirm-left = { CAP($left) } of the { $name } left? Yes or no.
done-finished = { CAP($name) }, used up.
done-thrown-out = { CAP($name) }, thrown out.
done-given-away = { CAP($name) }, given away.
marker-free = { $count ->
    [one] { $of ->
        [none] Its
       *[several] The
      } { $markers } is free.
   *[other] These are free: { $markers }.
  }
    .short = { CAP($markers) } free.
still-left = { CAP($amount) } left.
still-left-at = { CAP($amount) } left, { $at }.
that-was-the-last = That was the last.
offer-buy = Put { $name } on the list to buy?
    .short = On the list?
taken = { $amount ->
    [none] Noted.
   *[other] { CAP(OF($amount, $name)) } taken.
  }{ $left ->
    [none] {""}
   *[other] {" "}{ CAP($left) } left.
  }
taken-out = { CAP(OF($amount, $name)) } out.
left-noted = { CAP($name) }, { $left } left.
running-low = Running low.
