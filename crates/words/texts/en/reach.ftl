### How tablets reach this machine, and what they are told to trust

reach-fault-file = { $path } cannot be read or written: { $log }
    .next = Let the user that runs the bench write there, or free some space
reach-fault-half-a-root = half of this machine's root is missing: { $path }
    .next = Put it back from a backup of the folder. If it is lost, remove the folder: the bench makes a new root, and each tablet has to trust that one once
reach-fault-not-readable = { $path } is not what it should be: { $log }
    .next = Give a file in PEM form: text between BEGIN and END lines
reach-fault-not-covered = this machine's root was not made for the name { $name }
    .next = Leave the name out, or remove the folder { $folder }: the bench makes a new root for all its names, and each tablet has to trust that one once
reach-fault-unusable = the certificate cannot be used: { $log }
    .next = See that the key belongs to the certificate
reach-fault-listen = { $place } cannot be listened on: { $log }
reach-fault-announce = { $name } cannot be announced in the network: { $log }

reach-only-here = Nothing but this machine can reach the bench. “Let the tablets in” in docs/install.md says how to change that.

# The page of a tablet that does not trust this machine yet.
trust-title = Open the bench on this tablet
trust-about = What this tablet sends and sees is encrypted once it trusts this bench. That is done once, in three steps.
trust-first = 1 · Get the certificate
trust-get = Get the certificate
trust-compare = Compare what the tablet shows of it as SHA-256 with the figures on the bench’s own screen, under “Access keys”. If they differ, leave it: somebody stands between.
trust-figures = SHA-256 of the bench’s certificate, to compare with what the tablet shows:
trust-second = 2 · Trust it
trust-android = Android
trust-android-how = Settings, search for “CA certificate”, Install anyway, choose setwright.crt. The tablet asks for its screen lock.
trust-ipad = iPad or iPhone
trust-ipad-how = Allow the download. Settings, “Profile Downloaded”, Install. Then Settings, General, About, Certificate Trust Settings: switch on the one that begins with “Setwright bench”.
trust-windows = Windows
trust-windows-how = Open setwright.crt, Install Certificate, Current User, place it in “Trusted Root Certification Authorities”, Finish.
trust-mac = Mac
trust-mac-how = Open setwright.crt, it goes into Keychain Access. Open it there, Trust, “Always Trust”.
trust-linux = Linux, and Firefox anywhere
trust-linux-how = In the browser: Settings, search for “certificates”, Authorities, Import, choose setwright.crt, tick websites.
trust-third = 3 · Open the bench
trust-open-about = The browser then says nothing of a danger. If it still does, step 2 is not done: do not go past the warning.
trust-open = Open { $address }
trust-only-here = The certificate is good for this bench alone: only names and addresses of a local network. It lets nobody read what else the tablet does.
