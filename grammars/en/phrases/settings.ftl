# Settings of the household.

ask-watts = How many watts is your microwave? It is on a plate inside the door.
ask-summary-at = At what time shall I tell you what to use up?
watts-are = Your microwave is { $watts } watts.
watts-unknown = Your microwave's watts are not recorded.
guidance-is = I report { $region ->
    [uk] United Kingdom guidance, from the Food Standards Agency
   *[us] United States guidance, from the Department of Agriculture
  }.
measures-are = Measures are { $measures ->
    [metric] metric
   *[us] US customary
  } now.
summary-at = The summary comes at { $time }.
no-summary = No nightly summary.
quiet-from = I keep quiet from { $from } to { $to }, except when you speak to me.
no-quiet = No quiet hours.
settings-help = You can set the microwave's watts, whose guidance I report, the summary's time and quiet hours.
no-devices = No device has been let in.
device = { $when ->
    [none] the { $name }, never heard yet
   *[other] the { $name }, last heard { $when }
  }
devices-here = { $count ->
    [one] One: { $devices }.
   *[other] { CAP($count) } devices: { $devices }.
  }
confirm-setting = { $setting } Right? Yes or no.
