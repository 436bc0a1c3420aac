### Because: why something was taken back or changed, where the program gives the reason

because-wrong = that was wrong
because-other-part =
    { $reason ->
        [none] read before another { $kind } was put in
       *[other] read before another { $kind } was put in: { $reason }
    }
because-exchanged = read with the { $kind } of the { $club } in it; exchanged since
because-plan-lost =
    { $reason ->
        [none] read before the club lost its plan
       *[other] read before the club lost its plan: { $reason }
    }
because-not-in-plan = the accepted plan does not use it
because-weigh-in-back = its weigh-in was taken back
