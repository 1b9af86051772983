# The charts page.

charts-title = Charts
charts-nothing = There is nothing to count yet. Put something away on the board, or by voice.
thrown-heading = What was thrown out
thrown-nothing = Nothing was thrown out in the last two months, as far as is recorded.
thrown-kept = { $days ->
    [one] kept one day
   *[other] kept { $days } days
  }
thrown-opened = { $days ->
    [one] opened one day
   *[other] opened { $days } days
  }
thrown-thawed = { $days ->
    [one] thawed one day
   *[other] thawed { $days } days
  }
thrown-age-unknown = age not known
