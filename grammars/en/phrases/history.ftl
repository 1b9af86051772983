# Who did what, undoing and doing again.

did = { CAP($who) } { $verb ->
    [put-away] put away
    [took] took some of
    [finished] finished
    [threw-out] threw out
    [gave-away] gave away
    [moved] moved
    [marked] put a marker on
    [unmarked] took the marker off
    [amended] added facts about
    [opened] opened
    [froze] froze
    [thawed] set to thaw
    [took-out] took out
    [reheated] reheated
    [split] divided
    [merged] put together
    [built-a-place] added places to
    [renamed-a-place] changed the place
    [gave-dots-a-meaning] gave dots the meaning
    [put-on-the-list] put on the list
    [took-off-the-list] took off the list
    [bought] bought
    [noted] left a message for
    [imported] read in
   *[other] changed
  } { $about ->
    [none] something
   *[other] { $about }
  } { $when }
entry = { $entry }.
entries = { CAP($count) } changes: { $entries }.
nothing-done = Nothing like that is recorded.
nobody-did = Nothing is recorded about the { $name }.
nothing-changed = Nothing has changed.
undone = Undone: { $verb ->
    [put-away] { $about ->
        [none] it is off the record
       *[other] { $about } { IS($about) } off the record
      }
    [took] { $about } { IS($about) } as before
    [finished] { $about } { IS($about) } back on the record
    [threw-out] { $about } { IS($about) } back on the record
    [gave-away] { $about } { IS($about) } back on the record
    [moved] { $about } { IS($about) } back where recorded before
    [froze] { $about } { IS($about) } back where recorded before
    [thawed] { $about } { IS($about) } as before
    [marked] the marker is off the { $about }
    [unmarked] the marker is back on the { $about }
    [put-on-the-list] { $about } { IS($about) } off the list
    [took-off-the-list] { $about } { IS($about) } back on the list
    [bought] { $about } { IS($about) } back on the list
   *[other] { $about ->
        [none] that is as before
       *[other] { $about } { IS($about) } as before
      }
  }.
    .short = Undone.
nothing-to-undo = There is nothing of yours to undo.
undo-blocked = I cannot undo that: { $about ->
    [none] something
   *[other] { $about }
  } was changed since{ $who ->
    [none] {""}
   *[other] {" "}by { $who }
  }.
nothing-to-redo = There is nothing to do again.
redone = Done again{ $about ->
    [none] {""}
   *[other] : { $about }
  }.
