# The gate: a page that is not let in yet, or no longer.

gate-title = This page is not let in yet
gate-sent-away-title = This page is no longer let in
gate-sent-away = An owner of the kitchen took its key back, or it was signed out. What this page knew of the kitchen is forgotten here.
gate-ask = Ask to be let in
gate-name = What to call this device, for example Ruth’s phone
gate-get-code = Get a code
gate-code-is = The code is
gate-code-then = An owner of the kitchen says on a device that is let in: “let in the device with code” and the digits, or confirms it on its Home page. This page then opens by itself. The code lasts ten minutes.
gate-key-heading = Or use a key
gate-key = Key of a device of this kitchen (the service prints one when it starts)
gate-go-in = Go in
gate-wrong-key = That key is not known here.
gate-needs-https = The key is right, but a browser keeps it only over https. Open this page by its https address; or, on a home network that you trust, whoever runs the service sets SECURE_COOKIES=false and starts it again.
gate-needs-cookies = The key is right, but this browser did not keep it. Allow cookies for this address.
device-phone = phone
device-tablet = tablet
device-computer = computer
device-page = page

join-title = You are invited to { $household }
join-as-speak = This device may then talk to the kitchen, and do on the board what may be said.
join-as-help = This device may then help: see the kitchen, talk to it and correct its record.
join-as-own = This device may then do everything, as an owner: people, devices and settings too.
join-go-in = Come in
join-not-valid = This invitation does not work any more. It was used, taken back, or is older than an hour. Ask for another one.
join-unreadable = This invitation is not whole. Ask for it again.
