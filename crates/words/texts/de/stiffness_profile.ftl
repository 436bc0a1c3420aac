### Stiffness along one shaft, from its own readings

stiffness-fault-count =
    { $n ->
        [0] zu diesem Schaft gibt es keine Messwerte
       *[other] { $n } Messwerte zu einem Schaft, höchstens { $most } sind möglich
    }
    .next = Bei drei bis acht Einspannlängen messen
stiffness-fault-one-figure = Messwert { $place } braucht entweder Frequenz oder Durchbiegung
    .next = Das Gemessene eingeben und das andere leer lassen
stiffness-fault-no-blank = das Modell von Schaft { $code } hat keinen Rohschaft dieser Nummer
    .next = Die Nummer des Schafts berichtigen oder den Rohschaft im Modell ergänzen
stiffness-fault-not-in-hand = Schaft { $code } ist nicht da: Er ist verbaut, beiseitegelegt oder bestellt
    .next = Einen Rohschaft messen, bevor er gekürzt wird
stiffness-fault-not-a-shaft = Teil { $code } ist kein Schaft
    .next = Den Code eines Schafts angeben

profile-page = Steifigkeitsprofil { $code }
profile-open = Steifigkeitsprofil
profile-about = Den Rohschaft bei mehreren Längen einspannen, mit dem Testgewicht am Tip anzupfen und für jede Einspannlänge den Messwert eingeben. Oder ein Gewicht anhängen und eingeben, wie weit er sich durchbiegt. Die Vorhersage seines Schlägers rechnet dann mit dem eigenen Verlauf statt mit dem des Modells.
profile-none = Dieser Schaft ist nicht gemessen. Der Verlauf stammt aus dem Modell: { $from }.
profile-read-by = Gemessen von { $by }, { $at }.
profile-cut-since = Der Schaft wurde seit der Messung gekürzt. Die Messwerte gelten nicht mehr: noch einmal messen.
profile-band = Zwischen Einspannung und Tip auf ± { $percent } % bekannt; allein nach dem Modell ± { $model } %.
profile-told = Messwerte: { $n }; unabhängige Aussagen zum Verlauf: { $figures }.
profile-enough =
    { $n ->
        [one] Eine Frequenz bei der üblichen Einspannlänge sagt fast alles: ± { $percent } %.
       *[other] { $n } Frequenzen sagen fast alles, was eine Einspannung kann, ± { $percent } %: Die Einspannlängen gleichmäßig von { LENGTH($from_mm, digits: 1) } bis { LENGTH($to_mm, digits: 1) } verteilen.
    }
profile-gives = Nach diesen Messwerten wirkt ein Schaft in dieser Einspannung { LENGTH($gives_mm, digits: 1) } ± { LENGTH($band_mm, digits: 1) } länger, als er ist.
profile-doubted = Messwert { $place } passt nicht zu den anderen: { $read } gemessen, { $fitted } nach dem Verlauf. Noch einmal messen: Stimmt die Einspannlänge?
profile-readings = Messwerte
profile-held = { $n }: in der Einspannung
profile-held-missing = Messwert { $n }: Wie viel vom Butt war eingespannt?
profile-cpm = Frequenz
profile-deflection = oder Durchbiegung
profile-more = Mehr Messwerte
profile-weight = Gewicht daran
profile-weight-hint = Für alle Messwerte gleich
profile-place = Schwerpunkt des Gewichts vor dem Tip
profile-place-hint = Negativ, wenn es auf dem Schaft sitzt oder hängt
profile-keep = Messwerte speichern
profile-look = Zeigen, ohne zu speichern
profile-take-back = Messwerte zurücknehmen
profile-place-column = Vom Tip
profile-stiffness-column = Biegesteifigkeit
profile-band-column = ±
profile-model-column = Modell
profile-caution = Schutzbrille tragen: Ein angezupfter Schaft kann das Gewicht am Tip wegschleudern. Das Gewicht so befestigen, dass es sich nicht lösen kann.
profile-line = { LENGTH($place_mm, digits: 0) } vom Tip: { $own } ± { $band } %, Modell { $model } ± { $model_band } %
