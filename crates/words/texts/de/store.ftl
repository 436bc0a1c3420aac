### Store

# What the database refuses.
store-address = die Datenbankadresse „{ $url }“ ist nicht brauchbar: { $log }
    .next = sqlite:///path/to/file.db oder postgres://user@host/name angeben
store-no-shop = in { $place } gibt es noch keine Werkstatt
    .next = `setwright serve` legt eine an; liegt Ihre woanders, geben Sie den Ort mit --database an
store-newer = die Datenbank { $place } hat Schema { $found }, diese Version kennt Schemas bis { $known }
    .next = Die neuere Version starten, die sie geschrieben hat; nichts wurde geändert
store-not-a-database = { $place } ist keine Datenbankdatei, oder ihr Anfang ist beschädigt
    .next = Den Pfad prüfen; stimmt er, diese Datei aufheben und die letzte Kopie an ihre Stelle legen. Nichts wurde geändert
store-not-ours = in der Datenbank { $place } liegt schon die Tabelle „{ $table }“ eines anderen Programms
    .next = Nichts wurde geändert: diesem Programm eine eigene Datenbank geben
store-schema-damaged = die Datenbank { $place } wurde von Hand geändert: { $log }
    .next = Die letzte Sicherung zurückspielen oder das Fehlende ergänzen; bis dahin wird nichts hineingeschrieben
store-read-only = in die Datenbank { $place } lässt sich nicht schreiben
    .next = Diesem Benutzer Schreibrechte auf die Datei und ihren Ordner geben
store-disk-full = der Datenträger der Datenbank { $place } ist voll, die Eingabe ist NICHT gespeichert
    .next = Platz schaffen, dann neu eingeben; alles vorher Bestätigte ist sicher
store-cannot-open = die Datenbank { $place } lässt sich nicht öffnen: { $log }
    .next = Prüfen, ob es den Ordner gibt und dieser Benutzer darin schreiben darf
store-server = der Datenbankserver { $place } ist nicht erreichbar: { $log }
    .next = Prüfen, ob er läuft, ob Adresse, Benutzer und Passwort stimmen und ob es die Datenbank gibt
store-disk = der Datenträger der Datenbank { $place } meldet einen Fehler: { $log }. Die Eingabe ist NICHT gespeichert
    .next = Den Datenträger und seinen freien Platz prüfen; kommt der Fehler wieder, die letzte Sicherung zurückspielen
store-in-use-elsewhere = ein anderes Programm hat { $place } geöffnet, deshalb blieb alles, wie es war
    .next = Zuerst das andere Programm beenden
store-on-server = die Werkstatt { $place } liegt auf einem Server, der seine Kopien selbst macht
    .next = Dort jede Nacht `pg_dump --format=custom --file=shop.dump NAME` laufen lassen und ausprobieren, ob `pg_restore` alles zurückbringt
store-copy-differs = die Kopie { $place } enthielt nicht, was die Werkstatt enthält, und wurde deshalb gelöscht
    .next = Neu anlegen; kommt der Fehler wieder, den Datenträger prüfen
store-torn = die Kopie { $place } ist beschädigt: { $log }
    .next = Eine ältere Kopie nehmen; diese blieb, wie sie war
store-busy = die Datenbank ist gerade mit einer anderen Eingabe beschäftigt, deshalb ist diese nicht gespeichert
    .next = Noch einmal eingeben
store-stale = { $what } wurde inzwischen auf einem anderen Bildschirm geändert (jetzt Version { $version }), deshalb wurde nichts überschrieben
    .next = Neu laden, die Änderung ansehen und noch einmal eingeben
store-code-taken = „{ $code }“ ist schon vergeben
    .next = Einen anderen Code wählen oder nachsehen, was ihn trägt
store-box-empty = in der Schachtel ist kein { $code } mehr
    .next = Die Schachtel noch einmal zählen oder eine andere wählen
store-part-ordered = { $code } ist bestellt und noch nicht da
    .next = Zuerst einbuchen oder ein anderes Teil wählen
store-part-aside = { $code } ist { $state }
    .next = Ist es in Ordnung, zuerst ins Lager zurücklegen; sonst ein anderes Teil wählen
store-part-taken =
    { $job ->
        [none] { $code } ist schon { $state }
       *[other] { $code } ist schon { $state }, Auftrag { $job }
    }
    .next = Ein anderes Teil wählen
store-in-use = das Modell „{ $code }“ wird noch gebraucht: { $users }
    .next = Zuerst dort herausnehmen; ein Modell, mit dem gebaut wurde, bleibt für die Akte
store-missing = { $what } „{ $name }“ gibt es nicht
    .next = Den Code prüfen oder zuerst anlegen
store-already-taken-back = dieser Messwert ist schon zurückgenommen („{ $why }“)
    .next = Nichts wurde geändert: den Schläger neu laden
store-key-reused = dieses Formular wurde schon mit einer anderen Eingabe abgeschickt ({ $saved }), deshalb ist die neue nicht gespeichert
    .next = Den Schläger neu laden und noch einmal eingeben
store-not-storable = { $what } lässt sich nicht speichern: { $problem }
    .next = Die Eingabe prüfen
store-damaged = { $place } in der Datenbank ist nicht lesbar: { $log }
    .next = Jemand hat von Hand geändert, oder der Datenträger hatte einen Fehler: die letzte Sicherung zurückspielen
store-not-writing = eine Änderung wurde in einer Transaktion versucht, die nur liest
    .next = Das ist ein Fehler des Programms: den Entwicklern melden
store-database = die Datenbank { $place } hat die Eingabe abgelehnt, sie ist nicht gespeichert
    .next = Noch einmal versuchen; kommt der Fehler wieder, mit dem Protokoll melden

# What is kept, in a sentence about it.
store-part-of-customer = { $code } gehört { $owner } und kommt nur in Schläger dieses Kunden
    .next = Ein anderes Teil nehmen oder unter Lager angeben, dass es jetzt der Werkstatt gehört
stored-part = Teil { $code }
stored-club = Schläger { $card }
stored-job = Auftrag { $job }
stored-order = Bestellung { $order }
stored-sheet = das Fittingblatt von { $player }
stored-customer = Kunde { $customer }
model-user-shop = die Einstellungen der Werkstatt
model-user-batches =
    { $n ->
        [one] 1 Ansatz
       *[other] { $n } Ansätze
    }
model-user-parts =
    { $n ->
        [one] 1 Teil
       *[other] { $n } Teile
    }
model-user-jobs =
    { $n ->
        [one] 1 Auftrag
       *[other] { $n } Aufträge
    }
model-user-sheets =
    { $n ->
        [one] 1 Blatt
       *[other] { $n } Blätter
    }
model-user-orders =
    { $n ->
        [one] 1 Bestellung
       *[other] { $n } Bestellungen
    }
model-user-models =
    { $n ->
        [one] 1 Modell
       *[other] { $n } Modelle
    }
model-user-other = { $n } { $name }
saved-reading = { $what } „{ $typed }“
saved-study-reading = „{ $typed }“
saved-study = Messsystemanalyse: { $scale }
saved-scale-event = { $text }

# An archive and its unpacking.
store-not-empty = in { $place } gibt es schon eine Werkstatt
    .next = Mit --database einen Ort angeben, an dem noch keine liegt; ein Archiv wird nie über eine Werkstatt entpackt
store-not-an-archive = Zeile { $line } des Archivs: { $fault }
    .next = Nichts wurde angelegt. Eine andere Kopie des Archivs nehmen
archive-fault-not-begun = es beginnt nicht wie ein Archiv dieses Programms
archive-fault-newer-form = eine neuere Version dieses Programms hat es geschrieben
archive-fault-cut-short = hier bricht es ab
archive-fault-other-table = eine Tabelle oder Spalte, die es in seinem Schema nicht gibt
archive-fault-no-table = eine Zeile vor ihrer Tabelle
archive-fault-values = eine Zeile mit zu wenigen oder zu vielen Werten
archive-fault-kind = ein Text, wo eine Zahl hingehört, oder umgekehrt
archive-fault-changed = es wurde nachträglich geändert: Die Prüfsumme stimmt nicht
archive-fault-incomplete = Zeilen fehlen, oder es sind mehr als angegeben
archive-fault-system = es ist nicht lesbar: { $log }
