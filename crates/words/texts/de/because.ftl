### Because: why something was taken back or changed, where the program gives the reason

because-wrong = das war falsch
because-other-part =
    { $reason ->
        [none] gemessen, bevor ein anderes Teil eingesetzt wurde ({ $kind })
       *[other] gemessen, bevor ein anderes Teil eingesetzt wurde ({ $kind }): { $reason }
    }
because-exchanged = mit einem Teil von { $club } gemessen ({ $kind }); inzwischen getauscht
because-plan-lost =
    { $reason ->
        [none] gemessen, bevor der Schläger seinen Plan verlor
       *[other] gemessen, bevor der Schläger seinen Plan verlor: { $reason }
    }
because-not-in-plan = der angenommene Plan verwendet es nicht
because-weigh-in-back = das Einwiegen wurde zurückgenommen
