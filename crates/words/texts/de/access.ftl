### Keys: who may come in from outside this machine

key-role-owner = Inhaber
key-role-builder = Schlägerbauer
key-role-reader = Leser
key-role-calendar = Kalender
key-holder-tablet = Tablet
key-holder-program = Programm
deed-look = ansehen
deed-work = arbeiten
deed-own = was nur der Inhaber tut
deed-calendar = den Kalender abholen

key-end-withdrawn = entzogen { $done_at } von { $by }
key-end-over = abgelaufen { $end_at }
key-end-until = bis { $end_at }
key-held-tablet = { $role }
key-held-program = Programm, { $role }

access-fault-no-key = dafür ist ein Zugang nötig
    .next = Dieses Gerät mit sechs Ziffern hereinlassen: Sie stehen unter „Zugänge“ auf einem Gerät, das schon Zugang hat
access-fault-bad-key = der Zugang ist hier nicht bekannt, wurde entzogen oder ist abgelaufen
    .next = Einen neuen verlangen
access-fault-not-allowed = der Zugang dieses Geräts (Rolle: { $role }) reicht dafür nicht
    .next = Auf einem Gerät des Inhabers erledigen oder ihn um einen anderen Zugang bitten
access-fault-wrong-code = diese Ziffern werden nicht angezeigt, oder ihre Zeit ist um
    .next = Die sechs Ziffern noch einmal ansehen oder neue anzeigen lassen
access-fault-too-many-wrong = zu oft falsche Ziffern
    .next = { $wait_min } Minuten warten, dann neue Ziffern anzeigen lassen
access-fault-name = ein Zugang braucht einen Namen mit höchstens { $most } Zeichen
    .next = Schreiben, wo das Tablet steht oder was das Programm tut
access-fault-days = ein Programm erhält seinen Zugang für 1 bis { $most } Tage
    .next = Eine ganze Zahl von Tagen schreiben
access-fault-calendar-tablet = mit einem Zugang nur zum Kalender kann ein Tablet nicht arbeiten
    .next = Inhaber, Schlägerbauer oder Leser wählen
access-fault-no-such-key = einen Zugang { $number }, der entzogen werden könnte, gibt es nicht
    .next = In der Liste unter „Zugänge“ nachsehen

page-keys = Zugänge
keys-title = Zugänge
keys-about = Jedes Tablet, jedes Telefon und jeder Rechner braucht einen Zugang, ebenso jedes Programm. Nur dieser Rechner selbst braucht keinen.
keys-address = Adresse für Tablets in Ihrem Netz: { $address }
keys-only-here = Zurzeit erreicht nur dieser Rechner die Werkstatt. Wie sich das ändern lässt, steht in docs/install.md unter „Let the tablets in“.
keys-tablet = Ein Tablet hereinlassen
keys-name = Name des Tablets
keys-name-hint = an welcher Werkbank es steht oder wessen Telefon es ist
keys-role = Darf
keys-role-hint = Der Inhaber alles; ein Schlägerbauer alle Arbeit, aber keine Zugänge, Einstellungen oder Preise; ein Leser nur ansehen.
keys-show-code = Sechs Ziffern zeigen
keys-in = Wer Zugang hat
keys-none = Noch niemand hat einen Zugang.
keys-program = Einem Programm Zugang geben
keys-program-about = Für ein anderes Programm, das über die API mit der Werkstatt arbeitet. Der Zugangsschlüssel wird einmal gezeigt.
keys-program-name = Name des Programms
keys-days = Gültig, Tage
keys-give = Zugang geben
keys-ended = { $n ->
    [one] 1 Zugang, abgelaufen oder entzogen
   *[other] { $n } Zugänge, abgelaufen oder entzogen
}
keys-column-name = Name
keys-column-role = darf
keys-column-used = zuletzt benutzt, von
keys-column-until = gültig
keys-column-withdraw = entziehen
keys-this-one = (dieses Gerät)
keys-given = seit { $given_at }, von { $by }
keys-used = { $used_at }
keys-never-used = nie
keys-withdraw = Entziehen
keys-withdraw-of = Zugang entziehen: { $name }
keys-code-for = Für { $name }, Rolle: { $role }
keys-code-type = Am neuen Tablet { $address } öffnen und diese Ziffern eintippen.
keys-code-picture = Code mit Adresse und Ziffern
keys-code-scan = Oder die Kamera des Tablets auf den Code richten.
keys-code-until = Die Ziffern gelten einmal, bis { $time }.
keys-code-done = Zurück zu den Zugängen
keys-secret-for = Zugangsschlüssel für { $name }, Rolle: { $role }
keys-secret-once = Jetzt kopieren: Er wird nicht gespeichert und nicht noch einmal gezeigt. Das Programm sendet ihn bei jeder Anfrage mit, als „Authorization: Bearer“ und diesen Text.
door-title = Hereinkommen
door-about = Dieses Gerät hat noch keinen Zugang. Auf einem, das ihn hat, am Fuß der Seite „Zugänge“ öffnen, „Sechs Ziffern zeigen“ wählen und sie hier eintippen.
door-scanned = Die sechs Ziffern wurden aus dem Code gelesen.
door-digits = Sechs Ziffern
door-come-in = Hereinkommen
door-lost = Noch kein Gerät hat Zugang? Auf dem Rechner, auf dem Setwright läuft, die Werkstatt im Browser öffnen oder „setwright key tablet“ starten.
key-line = { $number }  { $name } ({ $held }), { $until }
key-line-code = Diese Ziffern auf „{ $name }“ bis { $time } eintippen: { $code }
key-line-secret = Zugangsschlüssel für { $name }, nur dieses eine Mal gezeigt: { $secret }
