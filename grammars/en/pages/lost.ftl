# The page at a wrong address. It is made by the service, in the browser's language.

lost-title = No such page
lost-heading = There is no page at this address
lost-board = The board: what is in the kitchen, and talking to it
lost-home = Home: people, devices, settings
lost-labels = Labels
lost-charts = Charts
