# When something broke here, whatever it was.

went-wrong = Something went wrong on my side. Nothing was changed.
    .full = Something went wrong on my side. Nothing was changed. You can say it again, or say it another way.
went-wrong-again = Something went wrong on my side again. Nothing was changed. I let go of what we were at: say it in full.
