# Lists: how many first, then three or four at a time.

list-group = { $items }
list-more = { $left ->
    [one] One more.
   *[other] { $left } more.
  } Shall I go on?
    .short = { $left ->
        [one] One more?
       *[other] { $left } more?
      }
list-done = That is all of them.
    .short = That's all.
