### The picture of plans to choose from

choice-title = { $title }: { $points }
choice-point = plan { $plan }: { $x } { $across }, { $y } { $up }
