### Scale health

# What is refused of checks and calibrations.
check-fault-taken-back = this check is taken back already
    .next = Nothing needs to be done
check-fault-trusted = the { $name } is trusted already
    .next = Nothing needs to be done
check-fault-only-overdue = the { $name } is only out of trust because its calibration is overdue
    .next = Enter its new calibration, or when it is due
check-fault-not-trusted = the { $name } is out of trust already
    .next = Nothing needs to be done
check-fault-wrong-time = a check at { $at } cannot be entered; it is { $now_at } now
    .next = Leave “at” out, or give the time at which it was read, at most two weeks ago
check-fault-no-weight = the { $name } has no check weight
    .next = Enter a check weight for it first, under Scales, Weights and gauges
check-fault-nobody-calibrated = the name of who calibrated it is missing
    .next = Enter the laboratory, or who did it here
check-fault-calibrated-later = { $calibrated_on } is still to come
    .next = Enter the day on which it was calibrated
check-fault-due-before = it would be due again on { $due_on }, not after { $calibrated_on }
    .next = Enter a later day, or leave it empty
