### The funnel: the forecast of a finish, stage by stage

funnel-empty = Noch keine Stufe hat eine Vorhersage.
funnel-title = { $club }: Vorhersage des Endwerts, Stufe für Stufe
funnel-list = Endwert gegen { $target }, in Punkten
funnel-stage = Stufe
funnel-forecast = Vorhersage
funnel-band = Bereich
funnel-reading = Messwert
funnel-now = { $stage }, jetzt
funnel-ahead = Stufen ohne Punkt kommen noch: ihre Bereiche gelten, wenn jede davon gemessen wird.
funnel-doubted = { $points }, angezweifelt
