# Who did what, undoing and doing again.

did-thing = { $about ->
    [none] something
   *[other] { $about }
  }
did = { $who } { $verb ->
    [put-away] put away { did-thing }
    [took] took some { did-thing }
    [finished] finished { did-thing }
    [threw-out] threw out { did-thing }
    [gave-away] gave away { did-thing }
    [moved] moved { did-thing }
    [marked] put a marker on { did-thing }
    [unmarked] took the marker off { did-thing }
    [amended] added facts about { did-thing }
    [opened] opened { did-thing }
    [froze] froze { did-thing }
    [thawed] set { did-thing } to thaw
    [took-out] took { did-thing } out
    [reheated] reheated { did-thing }
    [split] divided { did-thing }
    [merged] put together { did-thing }
    [built-a-place] added places to { did-thing }
    [renamed-a-place] changed { did-thing }
    [gave-dots-a-meaning] gave a count the meaning { did-thing }
    [put-on-the-list] put { did-thing } on the list
    [took-off-the-list] took { did-thing } off the list
    [bought] bought { did-thing }
    [noted] { $about ->
        [none] left a message
       *[other] left a message for { $about }
      }
    [checked] checked { did-thing }
    [told-of-a-power-cut] told of a power cut
    [added-a-marker] added a marker
    [removed-a-place] removed the place { did-thing }
    [imported] read in { did-thing }
   *[other] changed { did-thing }
  } { $when }
entry = { $entry }.
entries = { CAP($count) } changes: { $entries }.
nothing-done = Nothing like that is recorded.
maker-is = { CAP($maker) }.
nobody-did = { $did ->
    [made] Nobody recorded who made the { $name }.
    [put-away] Nobody recorded who put the { $name } away.
    [opened] Nobody recorded who opened the { $name }.
    [bought] Nobody recorded who bought the { $name }.
   *[any] Nothing is recorded about the { $name }.
  }
nothing-of-yours = You have changed nothing yet.
listed-by = { CAP($who) } put { $name } on the list { $when }.
nobody-listed = Nobody recorded who put { $name } on the list.
checked-last = { CAP($when) }: { THE($at) } was checked{ $who ->
    [none] {""}
   *[other] {" "}by { $who }
  }.
    .short = { CAP($when) }.
checked-never = No check of { THE($at) } is recorded.
nothing-changed = Nothing has changed.
undone = Undone: { $verb ->
    [put-away] { $at ->
        [none] { $about ->
            [none] it is off the record
           *[other] { $about } { IS($about) } off the record
          }
       *[other] { $about } { IS($about) } back { $at }
      }
    [took] { $about } { IS($about) } as before
    [finished] { $about } { IS($about) } back on the record
    [threw-out] { $about } { IS($about) } back on the record
    [gave-away] { $about } { IS($about) } back on the record
    [moved] { $about } { IS($about) } back { $at ->
        [none] where recorded before
       *[other] { $at }
      }
    [froze] { $about } { IS($about) } back { $at ->
        [none] where recorded before
       *[other] { $at }
      }
    [thawed] { $about } { IS($about) } as before
    [marked] the marker is off the { $about }
    [unmarked] the marker is back on the { $about }
    [noted] the messages are as before
    [put-on-the-list] { $about } { IS($about) } off the list
    [took-off-the-list] { $about } { IS($about) } back on the list
    [bought] { $about } { IS($about) } back on the list
    [removed-a-place] { $about } { IS($about) } a place again
    [added-a-marker] the marker is off the record
    [told-of-a-power-cut] what was told last of the power cut is off the record
   *[other] { $about ->
        [none] that is as before
       *[other] { $about } { IS($about) } as before
      }
  }.
    .short = Undone.
nothing-to-undo = There is nothing of yours to undo.
nothing-taken-off = Nothing went off the record just now, so nothing is undone.
nothing-to-undo-of = Nothing was done to { THE($name) } just now, so nothing is undone.
# What was taken off the record stands there as before.
brought-back = Undone: { $about } { $count ->
    [one] { IS($about) }
   *[other] are
  } back { $at ->
    [none] on the record
   *[other] { $at }
  }, as before.
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
# What is no longer here, newest first.
gone-entry = { $name }, { $when }
gone-list = { $how ->
    [thrown-out] Thrown out
   *[used] Used up
  }: { $items }.
nothing-gone-then = Nothing in that time.
nothing-gone = { $how ->
    [thrown-out] Nothing was thrown out that I know of.
   *[used] Nothing was used up that I know of.
  }
