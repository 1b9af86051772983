# Why a change was not made, one phrase for each reason of the kitchen room.

refused-unknown-item = I have no record of that any more.
refused-unknown-place = I know no such place.
refused-unknown-marker = I know no such marker.
refused-unknown-person = I know no such person.
refused-unknown-purchase = That is not on the list.
refused-unknown-reminder = That timer is over already.
refused-unknown-note = That message is gone.
refused-unknown-stock-take = That check is over.
refused-already-gone = { $name ->
    [none] That is off the record already.
   *[other] { THE($name) } { IS($name) } off the record already.
  }
refused-still-here = { $name ->
    [none] That is still here.
   *[other] { THE($name) } { IS($name) } still here.
  }
refused-nothing-changes = { $name ->
    [none] That is as I have it already.
   *[other] I have that already for { THE($name) }.
  }
refused-no-name = I need a name for it.
refused-amount-unknown = { $name ->
    [none] I do not know how much there was. Tell me how much is left.
   *[other] I do not know how much { $name } there was. Tell me how much is left.
  }
refused-more-than-there-is = { $have ->
    [none] There is not that much.
   *[other] There { $have ->
        [one] is
       *[other] are
      } only { $have }.
  }
refused-unit-differs = { $have ->
    [none] I have it in another measure.
   *[other] I have it as { $have }. Tell me in that measure, or how much is left.
  }
refused-not-an-amount = That is no amount I can note.
refused-marker-in-use = { $name ->
    [none] That marker is on something else.
   *[other] That marker is on { THE($name) }.
  }
refused-no-marker = { $name ->
    [none] There is no marker on it.
   *[other] There is no marker on { THE($name) }.
  }
refused-looks-alike = You have a marker that feels the same.
refused-no-touch = Tell me how it feels.
refused-not-a-freezer = { $places ->
    [none] That is not a freezer.
   *[other] The { $places } is not a freezer.
  }
refused-which-freezer = { $places ->
    [none] I know of no freezer. Say, I have a freezer.
   *[other] Which freezer: { $places }?
  }
refused-already-frozen = { $name ->
    [none] That is frozen already.
   *[other] { THE($name) } { IS($name) } in the freezer already.
  }
refused-not-frozen = { $name ->
    [none] That was not frozen.
   *[other] { THE($name) } { IS($name) } not recorded as frozen.
  }
refused-not-out = { $name ->
    [none] That is not recorded as standing out.
   *[other] { THE($name) } { IS($name) } not recorded as standing out.
  }
refused-different-foods = Those are different foods.
refused-too-few = That takes at least two.
refused-contains-it = It is recorded as containing that.
refused-place-not-empty = There is still food in it.
refused-place-exists = { $places ->
    [none] I have that place already.
   *[other] I have that already: { $places }.
  }
refused-place-inside-itself = A place cannot be inside itself.
refused-already-listed = { $name ->
    [none] That is on the list already.
   *[other] { THE($name) } { IS($name) } on the list already.
  }
refused-list-empty = The list is empty.
refused-person-exists = { $name ->
    [none] I know that person already.
   *[other] I know { $name } already.
  }
refused-check-open = That place is being checked already. Say go on with the check.
refused-check-closed = That check is over.
refused-too-many = That is too many for me.
refused-in-the-past = That time is over already.
refused-changed-since = { $name ->
    [none] It was changed since.
   *[other] { THE($name) } { WAS($name) } changed since.
  }
refused-nothing-to-undo = There is nothing to undo.
refused-not-a-date = I know no such day.
refused-bad-setting = I cannot set that. Say it another way?
