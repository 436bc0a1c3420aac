### The picture of plans to choose from

choice-title = { $title }: { $points }
choice-point = Plan { $plan }: { $x } { $across }, { $y } { $up }
