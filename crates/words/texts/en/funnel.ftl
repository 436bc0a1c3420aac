### The funnel: the forecast of a finish, stage by stage

funnel-empty = No stage has a forecast yet.
funnel-title = How the finish of the { $club } is forecast, stage by stage
funnel-list = Finish against { $target }, in points
funnel-stage = stage
funnel-forecast = forecast
funnel-band = band
funnel-reading = reading
funnel-now = { $stage }, now
funnel-ahead = Stages without a dot are still to come: their bands hold if each of them is read.
funnel-doubted = { $points }, doubted
