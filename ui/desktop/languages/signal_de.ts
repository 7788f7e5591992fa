<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>stillshaft</name>
    <message>
        <location filename="../../../acquire/catalogue.py"/>
        <source>{0} passes through software that may convert the samples; prefer an input not marked so</source>
        <translation>{0} läuft durch Software, die Abtastwerte umrechnen kann; einen nicht so bezeichneten Eingang vorziehen</translation>
    </message>
    <message>
        <location filename="../../../acquire/catalogue.py"/>
        <source>source "{0}"</source>
        <translation>Quelle „{0}“</translation>
    </message>
    <message>
        <location filename="../../../acquire/catalogue.py"/>
        <source>the simulated rotor has no plane "{0}"; it has {1}</source>
        <translation>der simulierte Rotor hat keine Ebene „{0}“; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/catalogue.py"/>
        <source>source "{0}": needs a hook-up and a sample rate: --hookup FILE --rate HZ</source>
        <translation>Quelle „{0}“: braucht einen Anschluss und eine Abtastrate: --hookup FILE --rate HZ</translation>
    </message>
    <message>
        <location filename="../../../acquire/catalogue.py"/>
        <source>point {0}: full_scale is {1} V, the device's range {2} V: make them equal in the hook-up</source>
        <translation>Messpunkt {0}: Vollaussteuerung {1} V, Messbereich des Geräts {2} V: im Anschluss gleich setzen</translation>
    </message>
    <message>
        <location filename="../../../acquire/conversion.py"/>
        <source>the disk is full; choose another place</source>
        <translation>der Datenträger ist voll; einen anderen Ort wählen</translation>
    </message>
    <message>
        <location filename="../../../acquire/conversion.py"/>
        <source>System error.</source>
        <translation>Systemfehler.</translation>
    </message>
    <message>
        <location filename="../../../acquire/conversion.py"/>
        <source>the disk is full or refuses it; choose another place</source>
        <translation>der Datenträger ist voll oder nimmt es nicht an; einen anderen Ort wählen</translation>
    </message>
    <message>
        <location filename="../../../acquire/conversion.py"/>
        <source>{0}: has samples beyond full scale, which FLAC cannot hold; take .wav</source>
        <translation>{0}: hat Abtastwerte über der Vollaussteuerung, die FLAC nicht fasst; .wav nehmen</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>source "{0}": write for example "nidaqmx:Dev1/ai0" or "uldaq:0123ABCD"</source>
        <translation>Quelle „{0}“: zum Beispiel „nidaqmx:Dev1/ai0“ oder „uldaq:0123ABCD“ schreiben</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>{0}: needs the nidaqmx package: pip install 'stillshaft[daq]'</source>
        <translation>{0}: braucht das Paket nidaqmx: pip install 'stillshaft[daq]'</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>{0}: {1}; install the maker's driver</source>
        <translation>{0}: {1}; den Treiber des Herstellers installieren</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>{0}: needs the uldaq package: pip install 'stillshaft[daq]'</source>
        <translation>{0}: braucht das Paket uldaq: pip install 'stillshaft[daq]'</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>{0}: needs the maker's library libuldaq; build and install it first</source>
        <translation>{0}: braucht die Bibliothek libuldaq des Herstellers; erst bauen und installieren</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>no device at all</source>
        <translation>gar kein Gerät</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>{0}: not unique; there is {1}</source>
        <translation>{0}: nicht eindeutig; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>{0}: not found; there is {1}</source>
        <translation>{0}: nicht gefunden; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>not unique</source>
        <translation>nicht eindeutig</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>not found</source>
        <translation>nicht gefunden</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>{0}: has no range of ± {1} V; it has {2}</source>
        <translation>{0}: hat keinen Messbereich ± {1} V; es gibt {2}</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>{0}: the scan has ended; check the cable and the device</source>
        <translation>{0}: die Abtastung ist zu Ende; Kabel und Gerät prüfen</translation>
    </message>
    <message>
        <location filename="../../../acquire/daq.py"/>
        <source>{0}: runs at {1} Hz instead of {2} Hz; ask for a rate that it has</source>
        <translation>{0}: läuft mit {1} Hz statt {2} Hz; eine vorhandene Rate wählen</translation>
    </message>
    <message>
        <location filename="../../../acquire/driver.py"/>
        <source>the source came to its end</source>
        <translation>die Quelle ist zu Ende</translation>
    </message>
    <message>
        <location filename="../../../acquire/driver.py"/>
        <source>the source could not be opened: {0}: {1}</source>
        <translation>die Quelle ließ sich nicht öffnen: {0}: {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/driver.py"/>
        <source>not wanted</source>
        <translation>nicht gewünscht</translation>
    </message>
    <message>
        <location filename="../../../acquire/driver.py"/>
        <source>the source failed: {0}: {1}</source>
        <translation>die Quelle versagte: {0}: {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>reading it needs {0}: pip install 'stillshaft[files]'</source>
        <translation>zum Lesen ist {0} nötig: pip install 'stillshaft[files]'</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: cannot be read from frame {1} on ({2})</source>
        <translation>{0}: ab Abtastung {1} nicht lesbar ({2})</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: is damaged or no {1} file of samples ({2})</source>
        <translation>{0}: ist beschädigt oder keine {1}-Datei mit Abtastwerten ({2})</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: is larger than 2 GiB, and this format is read as a whole: export it in parts</source>
        <translation>{0}: ist größer als 2 GiB, und dieses Format wird als Ganzes gelesen: in Teilen exportieren</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: has lines of more than {1} letters; is it a table of samples?</source>
        <translation>{0}: hat Zeilen mit mehr als {1} Zeichen; ist es eine Tabelle von Abtastwerten?</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: has no line of numbers among the first {1}</source>
        <translation>{0}: hat unter den ersten {1} Zeilen keine mit Zahlen</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: time_column {1}, but it has {2} columns</source>
        <translation>{0}: time_column {1}, aber es gibt {2} Spalten</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: rate</source>
        <translation>{0}: Rate</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: nothing says the sample rate: put rate = "48000 Hz" or time_column into the hook-up</source>
        <translation>{0}: nichts nennt die Abtastrate: rate = "48000 Hz" oder time_column in den Anschluss schreiben</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: lines {1} to {2}: {3}</source>
        <translation>{0}: Zeilen {1} bis {2}: {3}</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: lines from {1} on have {2} columns instead of {3}</source>
        <translation>{0}: ab Zeile {1} gibt es {2} Spalten statt {3}</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: its times do not rise: name the right time_column, in seconds</source>
        <translation>{0}: die Zeiten steigen nicht: die richtige time_column nennen, in Sekunden</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: its samples are not evenly spaced in time: resample them first</source>
        <translation>{0}: die Abtastwerte liegen zeitlich nicht gleichmäßig: erst neu abtasten</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: its channels differ in length or are empty: {1}</source>
        <translation>{0}: die Kanäle sind ungleich lang oder leer: {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: has no dataset "samples" (frames, inputs) with an attribute rate_hz; it has {1}</source>
        <translation>{0}: hat keinen Datensatz „samples“ (frames, inputs) mit einem Attribut rate_hz; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: was written by an early version; convert the recording itself anew</source>
        <translation>{0}: stammt von einer frühen Version; die Aufnahme selbst neu umwandeln</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: its "about" is not what this program writes; it is damaged</source>
        <translation>{0}: „about“ ist nicht, was dieses Programm schreibt; die Datei ist beschädigt</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: its samples lie in another file; put them into this one</source>
        <translation>{0}: die Abtastwerte liegen in einer anderen Datei; in diese aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: its samples are no numbers, but {1}</source>
        <translation>{0}: die Abtastwerte sind keine Zahlen, sondern {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: says it has {1} frames, more than it can hold; it is damaged</source>
        <translation>{0}: nennt {1} Abtastungen, mehr als hineinpassen; die Datei ist beschädigt</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: is packed in chunks of more than 256 MiB; write it in smaller ones</source>
        <translation>{0}: ist in Blöcken von mehr als 256 MiB gepackt; in kleineren schreiben</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: has no variables samples (frames, inputs) and rate_hz; it has {1}</source>
        <translation>{0}: hat keine Variablen samples (frames, inputs) und rate_hz; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: samples must be a table of numbers (frames, inputs), not {1} {2}</source>
        <translation>{0}: samples muss eine Tabelle von Zahlen (frames, inputs) sein, nicht {1} {2}</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: says it has {1} frames of {2} inputs, more than can be read as a whole</source>
        <translation>{0}: nennt {1} Abtastungen von {2} Eingängen, mehr als sich im Ganzen lesen lässt</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: has no dataset 58 with a time response</source>
        <translation>{0}: hat keinen Datensatz 58 mit einem Zeitverlauf</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: its channels have different sample rates, or uneven ones</source>
        <translation>{0}: die Kanäle haben verschiedene oder ungleichmäßige Abtastraten</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: its channels are none, or have no common wf_increment</source>
        <translation>{0}: es gibt keine Kanäle oder kein gemeinsames wf_increment</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: is written as {1}; end the name so</source>
        <translation>{0}: wird als {1} geschrieben; den Namen so enden lassen</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: is there already; choose a new name</source>
        <translation>{0}: gibt es schon; einen neuen Namen wählen</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>converted from {0}</source>
        <translation>umgewandelt aus {0}</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>not converted to the end</source>
        <translation>nicht zu Ende umgewandelt</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: more than 2 GiB of samples: take .h5, .wav or .csv, which are written in blocks</source>
        <translation>{0}: mehr als 2 GiB Abtastwerte: .h5, .wav oder .csv nehmen, die blockweise geschrieben werden</translation>
    </message>
    <message>
        <location filename="../../../acquire/exchange.py"/>
        <source>{0}: rate_hz must be one number, not {1}</source>
        <translation>{0}: rate_hz muss eine Zahl sein, nicht {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>{0}: has {1} inputs, but the hook-up uses input {2}</source>
        <translation>{0}: hat {1} Eingänge, aber der Anschluss nutzt Eingang {2}</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>point: there is none; a hook-up needs at least one [[point]]</source>
        <translation>point: es gibt keinen; ein Anschluss braucht mindestens einen [[point]]</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>time_column: rate is given too; leave one of them out</source>
        <translation>time_column: rate ist auch angegeben; eins von beiden weglassen</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>the pulse</source>
        <translation>der Impuls</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>point {0}.input: input {1} is taken by {2}; each input carries one signal</source>
        <translation>point {0}.input: Eingang {1} ist belegt: {2}; jeder Eingang führt ein Signal</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>point {0}.name: {1} is empty or used twice; each point needs its own name</source>
        <translation>point {0}.name: {1} ist leer oder doppelt; jeder Messpunkt braucht einen eigenen Namen</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>point "{0}"</source>
        <translation>Messpunkt „{0}“</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>device: range "{0}" must be above 0 and iepe "{1}" from 0 to 20 mA, 0 for off</source>
        <translation>Messgerät: Messbereich „{0}“ muss größer als 0 sein und IEPE „{1}“ von 0 bis 20 mA, 0 für aus</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>{0}.{1}: must be above 0; a sensor wired the other way round has inverted = true</source>
        <translation>{0}.{1}: muss größer als 0 sein; ein umgekehrt angeschlossener Sensor wird als umgepolt angegeben</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>{0}.highpass: {1}: give none, one or two corners above 0 Hz</source>
        <translation>{0}.highpass: {1}: keine, eine oder zwei Eckfrequenzen größer als 0 Hz angeben</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>pulse.pulses_per_rev: {0} is not possible; give 1 to {1}</source>
        <translation>Impulse je Umdrehung: {0} ist nicht möglich; 1 bis {1} angeben</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>pulse.reference: one mark has no "{0}" one; leave reference out</source>
        <translation>Bezugsmarke: bei nur einer Marke gibt es keine „{0}“; weglassen</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>pulse.pulses_per_rev: {0} with one missing; it counts the missing mark too, 3 or more</source>
        <translation>Impulse je Umdrehung: {0} mit einem fehlenden; die fehlende Marke zählt mit, 3 oder mehr</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>{0}: {1} is not an input; inputs count from 1 to 64</source>
        <translation>{0}: {1} ist kein Eingang; Eingänge zählen von 1 bis 64</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>{0}: {1} is not a finite number of degrees</source>
        <translation>{0}: {1} ist keine endliche Gradzahl</translation>
    </message>
    <message>
        <location filename="../../../acquire/hookup.py"/>
        <source>{0}: has {1} input, but the hook-up uses input {2}</source>
        <translation>{0}: hat {1} Eingang, aber der Anschluss nutzt Eingang {2}</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>samples were lost</source>
        <translation>Abtastwerte gingen verloren</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>source "{0}": silent for {1} s; check the cable and the device</source>
        <translation>Quelle „{0}“: seit {1} s stumm; Kabel und Gerät prüfen</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>the process that drives the source ended unexpectedly</source>
        <translation>der Prozess, der die Quelle betreibt, endete unerwartet</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>the source did not open within {0} s; unplug it and try again</source>
        <translation>die Quelle ging in {0} s nicht auf; abziehen und neu versuchen</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>the source came back with {0} inputs at {1} Hz: start again</source>
        <translation>die Quelle kam mit {0} Eingängen und {1} Hz wieder: neu starten</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>{0}; it did not come back within {1} s</source>
        <translation>{0}; in {1} s kam sie nicht wieder</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>stopped by hand</source>
        <translation>von Hand angehalten</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>{0}; about {1} s are missing</source>
        <translation>{0}; etwa {1} s fehlen</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>the source volume was changed during the run, from {0} to {1}: record again</source>
        <translation>die Lautstärke der Quelle wurde während des Laufs von {0} auf {1} geändert: neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>the program ended</source>
        <translation>das Programm wurde beendet</translation>
    </message>
    <message>
        <location filename="../../../acquire/keeper.py"/>
        <source>the source came back with {0} input at {1} Hz: start again</source>
        <translation>die Quelle kam mit {0} Eingang und {1} Hz wieder: neu starten</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>{0}: is MAT of level 7.3; save it as level 7, or as HDF5 with samples and rate_hz</source>
        <translation>{0}: ist MAT der Stufe 7.3; als Stufe 7 speichern oder als HDF5 mit samples und rate_hz</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>it has no header of level 5</source>
        <translation>sie hat keinen Kopf der Stufe 5</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>{0}: is damaged or no .mat file of samples ({1})</source>
        <translation>{0}: ist beschädigt oder keine .mat-Datei mit Messwerten ({1})</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>it ends too early</source>
        <translation>sie endet zu früh</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>what is packed in it cannot be unpacked</source>
        <translation>was darin gepackt ist, lässt sich nicht auspacken</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>it has more than {0} variables</source>
        <translation>sie hat mehr als {0} Variablen</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>something other than a variable is packed in it</source>
        <translation>darin ist etwas anderes als eine Variable gepackt</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>a part of a variable has {0} bytes, at most {1} can be</source>
        <translation>ein Teil einer Variablen hat {0} Bytes, höchstens {1} sind möglich</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>a variable has no class or no shape</source>
        <translation>eine Variable hat keine Klasse oder keine Form</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>a variable has a shape below 0</source>
        <translation>eine Variable hat eine Form unter 0</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>{0} has no real numbers</source>
        <translation>{0} hat keine reellen Zahlen</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>{0} is no text</source>
        <translation>{0} ist kein Text</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>{0} has {1} bytes for a shape of {2}</source>
        <translation>{0} hat {1} Bytes für eine Form von {2}</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>a variable's head is none of level 4</source>
        <translation>der Kopf einer Variablen ist keiner der Stufe 4</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>{0} has {1} bytes, at most {2} can be</source>
        <translation>{0} hat {1} Bytes, höchstens {2} sind möglich</translation>
    </message>
    <message>
        <location filename="../../../acquire/matfile.py"/>
        <source>{0} has letters that are none</source>
        <translation>{0} hat Buchstaben, die keine sind</translation>
    </message>
    <message>
        <location filename="../../../acquire/process.py"/>
        <source>the acquisition process ended unexpectedly; start the source again</source>
        <translation>der Erfassungsprozess endete unerwartet; die Quelle neu starten</translation>
    </message>
    <message>
        <location filename="../../../acquire/process.py"/>
        <source>the acquisition process ended before it had opened the source</source>
        <translation>der Erfassungsprozess endete, bevor er die Quelle geöffnet hatte</translation>
    </message>
    <message>
        <location filename="../../../acquire/process.py"/>
        <source>{0}: {1}; what was recorded is kept</source>
        <translation>{0}: {1}; das Aufgenommene bleibt</translation>
    </message>
    <message>
        <location filename="../../../acquire/process.py"/>
        <source>the recording did not close within {0} s</source>
        <translation>die Aufnahme wurde in {0} s nicht geschlossen</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0} cannot be written into an event log</source>
        <translation>{0} lässt sich nicht in ein Ereignisprotokoll schreiben</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}; nothing was recorded</source>
        <translation>{0}; nichts wurde aufgenommen</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: the disk is full; what was recorded is kept</source>
        <translation>{0}: der Datenträger ist voll; das Aufgenommene bleibt</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: is empty (0 bytes); record again</source>
        <translation>{0}: ist leer (0 Byte); neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: is no recording that can be read, or its header is cut off ({1})</source>
        <translation>{0}: ist keine lesbare Aufnahme, oder ihr Kopf ist abgeschnitten ({1})</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: has no samples in it; record again</source>
        <translation>{0}: enthält keine Abtastwerte; neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: cannot be read: {1}</source>
        <translation>{0}: nicht lesbar: {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: is a folder; name the recording in it</source>
        <translation>{0}: ist ein Ordner; die Aufnahme darin nennen</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: there is no such file</source>
        <translation>{0}: die Datei gibt es nicht</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: is no ordinary file (a pipe or a device); name a recording</source>
        <translation>{0}: ist keine gewöhnliche Datei (eine Pipe oder ein Gerät); eine Aufnahme nennen</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: has {1} inputs; 1 to {2} can be read</source>
        <translation>{0}: hat {1} Eingänge; lesbar sind 1 bis {2}</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: a sample rate of {1} Hz is none; at most {2} MHz</source>
        <translation>{0}: eine Abtastrate von {1} Hz gibt es nicht; höchstens {2} MHz</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: is larger than {1} MiB; remove the file to use the recording without it</source>
        <translation>{0}: ist größer als {1} MiB; die Datei entfernen, um die Aufnahme ohne sie zu nutzen</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: line {1} is damaged; remove the file to use the recording without it</source>
        <translation>{0}: Zeile {1} ist beschädigt; die Datei entfernen, um die Aufnahme ohne sie zu nutzen</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: has more than {1} gaps; remove the file to use the recording without it</source>
        <translation>{0}: hat mehr als {1} Lücken; die Datei entfernen, um die Aufnahme ohne sie zu nutzen</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: has only {1} bytes, less than the header of any recording; record again</source>
        <translation>{0}: hat nur {1} Byte, weniger als der Kopf einer Aufnahme; neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../acquire/recording.py"/>
        <source>{0}: is MP3, which keeps neither amplitude nor phase; record as WAV, FLAC or AU</source>
        <translation>{0}: ist MP3, das weder Amplitude noch Phase bewahrt; als WAV, FLAC oder AU aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>support: there are {0}; a rotor has two</source>
        <translation>support: es gibt {0}; ein Rotor hat zwei</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>plane {0}.unbalance</source>
        <translation>Ebene {0}, Unwucht</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>plane: there is none; a rotor needs at least one [[plane]]</source>
        <translation>plane: es gibt keine; ein Rotor braucht mindestens eine [[plane]]</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>{0}: "{1}" is too large for a machine; is it in the right unit?</source>
        <translation>{0}: „{1}“ ist zu groß für eine Maschine; stimmt die Einheit?</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>{0}: has {1} entries, at most {2}</source>
        <translation>{0}: hat {1} Einträge, höchstens {2}</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>{0}: {1} must be finite, at most {2}</source>
        <translation>{0}: {1} muss endlich sein, höchstens {2}</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>{0}: "{1}": write for example "19 g at 65"</source>
        <translation>{0}: „{1}“: zum Beispiel „19 g at 65“ schreiben</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>flexible.at_planes: has {0} values for {1} planes</source>
        <translation>flexible.at_planes: hat {0} Werte für {1} Ebenen</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>rotor.{0}: {1} must be above 0 and below {2}</source>
        <translation>rotor.{0}: {1} muss größer als 0 und kleiner als {2} sein</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>{0}.sensor: "{1}" is none; there are {2}</source>
        <translation>{0}.sensor: „{1}“ gibt es nicht; es gibt {2}</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>{0}.order: {1} must be above 0 and no more than 100</source>
        <translation>{0}.order: {1} muss größer als 0 und höchstens 100 sein</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>fault.input: {0}; there are inputs 1 to {1}</source>
        <translation>fault.input: {0}; es gibt die Eingänge 1 bis {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>pulse.{0}: {1} must be a part from 0 to 1</source>
        <translation>pulse.{0}: {1} muss ein Anteil von 0 bis 1 sein</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>conditions.looseness: {0} must be above 0 and no more than 1</source>
        <translation>conditions.looseness: {0} muss größer als 0 und höchstens 1 sein</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>{0}: "{1}": 30 to 60 000 r/min</source>
        <translation>{0}: „{1}“: 30 bis 60 000 r/min</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>rotor.{0}: {1} must be above {2} and below {3}</source>
        <translation>rotor.{0}: {1} muss größer als {2} und kleiner als {3} sein</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>support.{0}: the rotor would swing with {1} Hz and less on it, or {2} Hz and more; are stiffness, mass and inertia in the right unit?</source>
        <translation>support.{0}: Der Rotor würde darauf mit {1} Hz und weniger schwingen oder mit {2} Hz und mehr; stimmen die Einheiten von Steifigkeit, Masse und Trägheit?</translation>
    </message>
    <message>
        <location filename="../../../acquire/scenario.py"/>
        <source>flexible.frequency: "{0}": {1} to {2} Hz</source>
        <translation>flexible.frequency: „{0}“: {1} bis {2} Hz</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>cut short</source>
        <translation>abgeschnitten</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>does not check</source>
        <translation>Prüfsumme stimmt nicht</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>version {0}, {1} inputs of {2} bytes: not understood</source>
        <translation>Version {0}, {1} Eingänge zu {2} Byte: nicht verstanden</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>the board "{0}" has changed its inputs or rate: start again</source>
        <translation>die Platine „{0}“ hat Eingänge oder Rate geändert: neu starten</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>has part of a frame</source>
        <translation>enthält eine unvollständige Abtastung</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>source "{0}": write for example "serial:/dev/ttyACM0" or "serial:COM5@921600"</source>
        <translation>Quelle „{0}“: zum Beispiel „serial:/dev/ttyACM0“ oder „serial:COM5@921600“ schreiben</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>boards on a serial line need pyserial: pip install 'stillshaft[daq]'</source>
        <translation>Platinen an serieller Leitung brauchen pyserial: pip install 'stillshaft[daq]'</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>source "serial:{0}": does not open ({1})</source>
        <translation>Quelle „serial:{0}“: lässt sich nicht öffnen ({1})</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>source "serial:{0}": no board has said what it is within {1} s; check speed and program of the board</source>
        <translation>Quelle „serial:{0}“: keine Platine hat sich in {1} s gemeldet; Geschwindigkeit und Programm der Platine prüfen</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>serial:{0} ({1})</source>
        <translation>serial:{0} ({1})</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>the serial line broke: {0}</source>
        <translation>die serielle Leitung brach ab: {0}</translation>
    </message>
    <message>
        <location filename="../../../acquire/serialline.py"/>
        <source>source "{0}": stopped sending; check cable and board</source>
        <translation>Quelle „{0}“: sendet nicht mehr; Kabel und Platine prüfen</translation>
    </message>
    <message>
        <location filename="../../../acquire/simulated.py"/>
        <source>simulated rotor at {0} r/min</source>
        <translation>simulierter Rotor mit {0} r/min</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>live measuring needs the PortAudio library; on Debian or Ubuntu: sudo apt-get install libportaudio2; recordings can still be opened</source>
        <translation>das Messen braucht die Bibliothek PortAudio; unter Debian oder Ubuntu: sudo apt-get install libportaudio2; Aufnahmen lassen sich trotzdem öffnen</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>no sound input at all</source>
        <translation>gar kein Audioeingang</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>source "{0}": not unique; there is {1}</source>
        <translation>Quelle „{0}“: nicht eindeutig; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>source "{0}": not found; there is {1}</source>
        <translation>Quelle „{0}“: nicht gefunden; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>source "{0}": is not there with {1} inputs; list the sources again</source>
        <translation>Quelle „{0}“: nicht mit {1} Eingängen da; die Quellen neu suchen</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>source "{0}": does not open with {1} inputs at {2} Hz ({3})</source>
        <translation>Quelle „{0}“: lässt sich nicht mit {1} Eingängen bei {2} Hz öffnen ({3})</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>sorts the channels anew</source>
        <translation>ordnet die Kanäle neu</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>resamples ({0})</source>
        <translation>tastet neu ab ({0})</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>; its source has {0} inputs at {1} Hz: record all of it so</source>
        <translation>; seine Quelle hat {0} Eingänge bei {1} Hz: sie im Ganzen so aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>source "{0}": the sound server {1}{2}</source>
        <translation>Quelle „{0}“: der Audioserver {1}{2}</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>source "{0}": stopped delivering; check the cable and the device</source>
        <translation>Quelle „{0}“: liefert nicht mehr; Kabel und Gerät prüfen</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundcard.py"/>
        <source>; its source has {0} input at {1} Hz: record all of it so</source>
        <translation>; seine Quelle hat {0} Eingang bei {1} Hz: ihn so aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../acquire/soundserver.py"/>
        <source>, muted</source>
        <translation>, stumm</translation>
    </message>
    <message>
        <location filename="../../../dsp/average.py"/>
        <source>{0} points over {1} revolutions: need 4 or more over 1 or more</source>
        <translation>{0} Punkte über {1} Umdrehungen: nötig sind 4 oder mehr über 1 oder mehr</translation>
    </message>
    <message>
        <location filename="../../../dsp/average.py"/>
        <source>{0} points, but only {1} samples in a span: ask for fewer points</source>
        <translation>{0} Punkte, aber nur {1} Abtastwerte in einem Abschnitt: weniger Punkte wählen</translation>
    </message>
    <message>
        <location filename="../../../dsp/average.py"/>
        <source>{0} whole spans of {1} revolutions: need {2} or more; record longer</source>
        <translation>{0} ganze Abschnitte von {1} Umdrehungen: {2} oder mehr nötig; länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/calibration.py"/>
        <source>{0} s are too short: record {1} s or more</source>
        <translation>{0} s sind zu kurz: {1} s oder mehr aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/calibration.py"/>
        <source>there are values that are not finite: record again</source>
        <translation>es gibt Werte, die nicht endlich sind: neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/calibration.py"/>
        <source>the record is clipped at full scale: lower the signal or the gain, record again</source>
        <translation>die Aufnahme ist bei Vollaussteuerung übersteuert: Signal oder Verstärkung senken, neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/calibration.py"/>
        <source>there is no tone in the record: switch the signal on and record again</source>
        <translation>in der Aufnahme ist kein Ton: das Signal einschalten und neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/calibration.py"/>
        <source>{0} V: the known voltage must be above 0</source>
        <translation>{0} V: die bekannte Spannung muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../dsp/calibration.py"/>
        <source>the strongest tone is {0} Hz, not the shaker's {1} Hz: hold it still and check that the sensor sits tight on it</source>
        <translation>der stärkste Ton liegt bei {0} Hz, nicht bei den {1} Hz des Erregers: ruhig halten und prüfen, dass der Sensor fest darauf sitzt</translation>
    </message>
    <message>
        <location filename="../../../dsp/calibration.py"/>
        <source>the tone hardly stands out of the noise: make it stronger or record longer</source>
        <translation>der Ton ragt kaum aus dem Rauschen: verstärken oder länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/calibration.py"/>
        <source>the reference input has no clear tone: check that the signal reaches it</source>
        <translation>der Bezugseingang hat keinen klaren Ton: prüfen, dass das Signal ihn erreicht</translation>
    </message>
    <message>
        <location filename="../../../dsp/calibration.py"/>
        <source>input {0} has none of the signal that reaches the reference: connect it to all inputs</source>
        <translation>Eingang {0} hat nichts von dem Signal, das den Bezugseingang erreicht: an alle Eingänge anschließen</translation>
    </message>
    <message>
        <location filename="../../../dsp/candidates.py"/>
        <source>{0}.length: {1} does not reach round its pulley, {2} mm; give the pitch length of the belt and the pitch diameter of the pulley</source>
        <translation>{0}.length: {1} reicht nicht um die Riemenscheibe, {2} mm; Wirklänge des Riemens und Wirkdurchmesser der Scheibe angeben</translation>
    </message>
    <message>
        <location filename="../../../dsp/candidates.py"/>
        <source>name: is empty; a machine or belt needs one to be named by</source>
        <translation>name: ist leer; Maschine oder Riemen braucht einen, um benannt zu werden</translation>
    </message>
    <message>
        <location filename="../../../dsp/candidates.py"/>
        <source>there is none: add line, [[machine]] or [[belt]]</source>
        <translation>es gibt keine: line, [[machine]] oder [[belt]] hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../dsp/candidates.py"/>
        <source>{0}: "{1}" must be above 0</source>
        <translation>{0}: „{1}“ muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../dsp/candidates.py"/>
        <source>{0}: "{1}" must be 0 or more</source>
        <translation>{0}: „{1}“ muss 0 oder mehr sein</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>flat magnet</source>
        <translation>Flachmagnet</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>two-pole magnet</source>
        <translation>Zweipolmagnet</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>hand probe</source>
        <translation>Tastspitze</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>input {0} has a value that is not finite at {1} s: the file is damaged; record again</source>
        <translation>Eingang {0} hat bei {1} s einen Wert, der nicht endlich ist: die Datei ist beschädigt; neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>no samples: the recording is empty; record again</source>
        <translation>keine Abtastwerte: die Aufnahme ist leer; neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>input {0} ("{1}") is held by hand: its phase does not repeat; mount the sensor with a magnet, adhesive or a stud</source>
        <translation>Eingang {0} („{1}“) wird von Hand gehalten: seine Phase wiederholt sich nicht; den Sensor mit Magnet, Kleber oder Gewindebolzen befestigen</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>input {0} ("{1}")</source>
        <translation>Eingang {0} („{1}“)</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>, and that the system lets this program record</source>
        <translation>, und dass das System diesem Programm das Aufnehmen erlaubt</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>{0} is silent: every sample is {1}; check the sensor, its supply and the cable{2}</source>
        <translation>{0} ist stumm: jeder Abtastwert ist {1}; Sensor, Speisung und Kabel prüfen{2}</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>{0} looks like a pulse and the pulse input {1} does not: they seem to be swapped; change the cables or the input numbers in the hook-up</source>
        <translation>{0} sieht wie ein Impuls aus und der Impulseingang {1} nicht: sie sind wohl vertauscht; Kabel oder Eingangsnummern im Anschluss tauschen</translation>
    </message>
    <message>
        <location filename="../../../dsp/channels.py"/>
        <source>{0} is clipped: {1} samples at full scale; lower the gain or choose a larger range, record again</source>
        <translation>{0} ist übersteuert: {1} Abtastwerte bei Vollaussteuerung; Verstärkung senken oder größeren Messbereich wählen, neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>pulse, input {0}</source>
        <translation>Impuls, Eingang {0}</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>no pulses while the machine stands</source>
        <translation>keine Impulse im Stillstand</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>{0} pulses while the machine stands, as of {1} r/min</source>
        <translation>{0} Impulse im Stillstand, wie bei {1} r/min</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>lamps or a drive nearby: shade the sensor, keep its cable away from mains and drives</source>
        <translation>Lampen oder ein Umrichter in der Nähe: Sensor abschatten, sein Kabel von Netz und Umrichtern fernhalten</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>has values that are not finite</source>
        <translation>hat keine endlichen Werte</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>the driver or the file is damaged: record again</source>
        <translation>Treiber oder Datei ist beschädigt: neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>is exactly zero throughout</source>
        <translation>ist durchweg genau null</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>check cable and sensor supply, that the input is not muted, and that the system lets this program record (microphone permission)</source>
        <translation>Kabel und Sensorspeisung prüfen, dass der Eingang nicht stumm ist und das System diesem Programm das Aufnehmen erlaubt (Mikrofonfreigabe)</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>stands at {0} throughout</source>
        <translation>steht durchweg auf {0}</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>bias open or short: check supply and cable</source>
        <translation>Speisung offen oder kurzgeschlossen: Speisung und Kabel prüfen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>is only {0} % of full scale high</source>
        <translation>ist nur {0} % der Vollaussteuerung hoch</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>raise the gain or its supply</source>
        <translation>Verstärkung oder Speisung erhöhen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>{0}, input {1}</source>
        <translation>{0}, Eingang {1}</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>is clipped: {0} samples at full scale</source>
        <translation>übersteuert: {0} Werte bei Vollaussteuerung</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>lower the gain or take a larger range</source>
        <translation>Verstärkung senken oder größeren Messbereich nehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>stood still for {0} ms</source>
        <translation>stand {0} ms lang still</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>check cable and supply: wiggle test</source>
        <translation>Kabel und Speisung prüfen: wackeln</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>reaches {0} % of full scale</source>
        <translation>erreicht {0} % der Vollaussteuerung</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>lower the gain</source>
        <translation>Verstärkung senken</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>is weak: {0} % of full scale rms</source>
        <translation>ist schwach: {0} % der Vollaussteuerung rms</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>raise the gain</source>
        <translation>Verstärkung erhöhen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>jumps {0} times</source>
        <translation>springt {0}-mal</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>intermittent cable: wiggle test</source>
        <translation>Kabel mit Wackelkontakt: wackeln</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>surges slowly</source>
        <translation>schwankt langsam</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>a loose magnet, or the sensor settles: wait 30 s, mount it again</source>
        <translation>loser Magnet, oder der Sensor schwingt ein: 30 s warten, neu befestigen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>carry the same signal</source>
        <translation>führen dasselbe Signal</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>one cable in both, or channels copied by the system: tap each sensor and watch its input</source>
        <translation>ein Kabel in beiden, oder das System kopiert Kanäle: jeden Sensor beklopfen und seinen Eingang beobachten</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>put this right first: nothing can be measured</source>
        <translation>zuerst beheben: so ist nichts zu messen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>shows {0} the nameplate speed, {1} r/min</source>
        <translation>zeigt {0} die Nenndrehzahl, {1} r/min</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>count the marks on the shaft: blacken a second one, or set pulses_per_rev</source>
        <translation>Marken auf der Welle zählen: eine zweite schwärzen oder Impulse je Umdrehung setzen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>has a corner of {0} Hz, above a fifth of running speed, {1} Hz</source>
        <translation>hat eine Eckfrequenz von {0} Hz, über einem Fünftel der Drehzahl, {1} Hz</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>needs a DC-coupled input; show displacement or acceleration meanwhile</source>
        <translation>braucht einen DC-gekoppelten Eingang; einstweilen Weg oder Beschleunigung zeigen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>a {0} hands on up to about {1} Hz, running speed is {2} Hz</source>
        <translation>{0} überträgt bis etwa {1} Hz, die Drehzahl ist {2} Hz</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>adhesive or a stud</source>
        <translation>Kleber oder Gewindebolzen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>1x {0} {1} is {2}: {3}</source>
        <translation>1x {0} {1} ist {2}: {3}</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>1x is {0} ± {1} {2}: hardly above its noise</source>
        <translation>1x ist {0} ± {1} {2}: kaum über dem Rauschen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>record longer, raise the gain, or mount the sensor nearer to the bearing</source>
        <translation>länger aufnehmen, Verstärkung erhöhen oder den Sensor näher am Lager befestigen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>1x {0} {1}, peak {2} % of full scale, {3}</source>
        <translation>1x {0} {1}, Spitze {2} % der Vollaussteuerung, {3}</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>comes twice a revolution, {0}° apart</source>
        <translation>kommt zweimal je Umdrehung, {0}° auseinander</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>a second bright spot, a key or a scratch: blacken it, or set pulses_per_rev</source>
        <translation>ein zweiter heller Fleck, eine Passfeder oder ein Kratzer: schwärzen oder Impulse je Umdrehung setzen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>{0} pulses missing and {1} too many of {2}</source>
        <translation>{0} Impulse fehlen und {1} zu viel von {2}</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>clean the mark, set distance and angle of the sensor, shade it</source>
        <translation>Marke reinigen, Abstand und Winkel des Sensors einstellen, abschatten</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>its edges scatter by {0}°</source>
        <translation>seine Flanken streuen um {0}°</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>a sharper mark, a stiffer bracket: pulse time modulated at the bracket's own frequency is one cause</source>
        <translation>schärfere Marke, steiferer Halter: die Eigenfrequenz des Halters kann die Impulszeit modulieren</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>its level swings through the turn or with the light</source>
        <translation>sein Pegel schwankt über die Umdrehung oder mit dem Licht</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>shade it from sun and lamps, tilt the sensor 10 to 15° off square</source>
        <translation>vor Sonne und Lampen abschatten, Sensor 10 bis 15° schräg stellen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>, edges to {0}°</source>
        <translation>, Flanken auf {0}°</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>{0} r/min, {1} edge, mark {2}° wide{3}</source>
        <translation>{0} r/min, {1} Flanke, Marke {2}° breit{3}</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>flickers at {0} Hz, {1} % of its height</source>
        <translation>flackert mit {0} Hz, {1} % seiner Höhe</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>lamps on the mains: shade the sensor or switch them off</source>
        <translation>Lampen am Netz: Sensor abschatten oder sie ausschalten</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>its pulses swing by ± {0}° at a rate of its own</source>
        <translation>seine Impulse schwanken um ± {0}° in eigenem Takt</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>the sensor's bracket vibrates: stiffen it, or fix it to the ground</source>
        <translation>der Sensorhalter schwingt: versteifen oder am Boden befestigen</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>hums at {0} Hz, {1} % of 1x</source>
        <translation>brummt mit {0} Hz, {1} % von 1x</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>earth loop or an open shield: one earth only, cable away from mains and drives</source>
        <translation>Erdschleife oder offener Schirm: nur eine Erde, Kabel weg von Netz und Umrichtern</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>has {0} % of the pulse in it</source>
        <translation>enthält {0} % des Impulses</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>crosstalk: lower the pulse's voltage, leave an input free between them, shielded cables</source>
        <translation>Übersprechen: Impulsspannung senken, einen Eingang dazwischen frei lassen, geschirmte Kabel</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>reaches {0} times full scale</source>
        <translation>erreicht das {0}-fache der Vollaussteuerung</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>the file is damaged: record again</source>
        <translation>die Datei ist beschädigt: neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/content.py"/>
        <source>{0} spectra averaged: single lines scatter much; record longer for a steadier spectrum</source>
        <translation>{0} Spektren gemittelt: einzelne Linien streuen stark; für ein ruhigeres Spektrum länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/content.py"/>
        <source>lines of {0} Hz do not part orders {1} Hz from each other: the shares are rough; record longer</source>
        <translation>Linien von {0} Hz trennen Ordnungen im Abstand {1} Hz nicht: die Anteile sind grob; länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/content.py"/>
        <source>the speed varies by ± {0} r/min: lines of higher orders are smeared; the order table is not</source>
        <translation>die Drehzahl schwankt um ± {0} r/min: Linien höherer Ordnungen sind verschmiert; die Ordnungstabelle nicht</translation>
    </message>
    <message>
        <location filename="../../../dsp/coupling.py"/>
        <source>the record has values that are not finite: record the step again</source>
        <translation>die Aufnahme hat Werte, die nicht endlich sind: den Sprung neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/coupling.py"/>
        <source>the record is clipped at full scale: make the step smaller or the range larger</source>
        <translation>die Aufnahme ist bei Vollaussteuerung übersteuert: den Sprung verkleinern oder den Messbereich vergrößern</translation>
    </message>
    <message>
        <location filename="../../../dsp/coupling.py"/>
        <source>{0} s after the step: need 0.2 s or more, and three times as long as it decays</source>
        <translation>{0} s nach dem Sprung: nötig sind 0.2 s oder mehr und das Dreifache der Abklingzeit</translation>
    </message>
    <message>
        <location filename="../../../dsp/coupling.py"/>
        <source>the step has hardly begun to decay in {0} s: the input is not AC-coupled, or record longer</source>
        <translation>der Sprung klang in {0} s kaum ab: der Eingang ist nicht AC-gekoppelt, sonst länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/coupling.py"/>
        <source>{0} s: too short for a step and its decay; record 2 s or more</source>
        <translation>{0} s: zu kurz für einen Sprung und sein Abklingen; 2 s oder mehr aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/coupling.py"/>
        <source>there is no step: switch a battery through a resistor onto the input while recording</source>
        <translation>es gibt keinen Sprung: während der Aufnahme eine Batterie über einen Widerstand auf den Eingang schalten</translation>
    </message>
    <message>
        <location filename="../../../dsp/edges.py"/>
        <source>the pulse channel is constant: no pulses; check the pulse sensor, its supply and the input</source>
        <translation>der Impulskanal ist konstant: keine Impulse; Impulssensor, Speisung und Eingang prüfen</translation>
    </message>
    <message>
        <location filename="../../../dsp/edges.py"/>
        <source>no whole pulse found: need 3 or more; record longer</source>
        <translation>kein ganzer Impuls gefunden: 3 oder mehr nötig; länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/edges.py"/>
        <source>the pulse channel has no two levels ({0} between them, noise {1}): no pulses; check which input carries the pulse</source>
        <translation>der Impulskanal hat keine zwei Pegel ({0} dazwischen, Rauschen {1}): keine Impulse; prüfen, welcher Eingang den Impuls führt</translation>
    </message>
    <message>
        <location filename="../../../dsp/edges.py"/>
        <source>{0} pulses found: need 3 or more; check the pulse sensor or record longer</source>
        <translation>{0} Impulse gefunden: 3 oder mehr nötig; Impulssensor prüfen oder länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/measure.py"/>
        <source>{0} pulses in {1} s: need 3 or more; check the pulse sensor or record longer</source>
        <translation>{0} Impulse in {1} s: 3 oder mehr nötig; Impulssensor prüfen oder länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/measure.py"/>
        <source>samples were lost at {0}: nothing was measured across it; record again</source>
        <translation>Abtastwerte gingen verloren bei {0}: darüber wurde nichts gemessen; neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/measure.py"/>
        <source>order {0}: must be above 0</source>
        <translation>Ordnung {0}: muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../dsp/measure.py"/>
        <source>weights "{0}": {1}</source>
        <translation>Gewichte „{0}“: {1}</translation>
    </message>
    <message>
        <location filename="../../../dsp/measure.py"/>
        <source>order {0} at {1} r/min is {2} Hz: more than 0.45 of the sample rate {3} Hz; choose a lower order or record faster</source>
        <translation>Ordnung {0} bei {1} r/min liegt bei {2} Hz: mehr als das 0.45-Fache der Abtastrate {3} Hz; niedrigere Ordnung wählen oder schneller abtasten</translation>
    </message>
    <message>
        <location filename="../../../dsp/measure.py"/>
        <source>one place</source>
        <translation>einer Stelle</translation>
    </message>
    <message>
        <location filename="../../../dsp/measure.py"/>
        <source>order {0}: must be above 0, from {1} to {2}</source>
        <translation>Ordnung {0}: muss größer als 0 sein, von {1} bis {2}</translation>
    </message>
    <message>
        <location filename="../../../dsp/order.py"/>
        <source>{0} block of whole revolutions: need 2 or more; record longer</source>
        <translation>{0} Block ganzer Umdrehungen: 2 oder mehr nötig; länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/quantity.py"/>
        <source>band {0} to {1} Hz: must rise, begin at {2} Hz or above and end below half the sample rate {3} Hz</source>
        <translation>Band {0} bis {1} Hz: muss steigen, bei {2} Hz oder höher beginnen und unter der halben Abtastrate {3} Hz enden</translation>
    </message>
    <message>
        <location filename="../../../dsp/ringdown.py"/>
        <source>nothing rings between {0} and {1} Hz after {2} hits: hit harder with a softer, heavier hammer, or ask for other frequencies</source>
        <translation>nach {2} Schlägen klingt zwischen {0} und {1} Hz nichts aus: härter schlagen, mit weicherem, schwererem Hammer, oder andere Frequenzen wählen</translation>
    </message>
    <message>
        <location filename="../../../dsp/ringdown.py"/>
        <source>{0} to {1} Hz: give two frequencies above 0, up to a quarter of the sample rate, {2} Hz</source>
        <translation>{0} bis {1} Hz: zwei Frequenzen größer als 0 angeben, bis zu einem Viertel der Abtastrate, {2} Hz</translation>
    </message>
    <message>
        <location filename="../../../dsp/ringdown.py"/>
        <source>a sample is not finite: the recording is damaged; record again</source>
        <translation>ein Abtastwert ist nicht endlich: die Aufnahme ist beschädigt; neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/ringdown.py"/>
        <source>{0} s: need {1} s or more, with quiet before the hit; record longer</source>
        <translation>{0} s: {1} s oder mehr nötig, mit Ruhe vor dem Schlag; länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/ringdown.py"/>
        <source>the hit at {0} s is overloaded and left out: hit softer or lower the gain</source>
        <translation>der Schlag bei {0} s ist übersteuert und bleibt weg: sanfter schlagen oder Verstärkung senken</translation>
    </message>
    <message>
        <location filename="../../../dsp/ringdown.py"/>
        <source>the hit at {0} s has {1} s to ring out and is left out: from {2} Hz on {3} s are needed; wait longer between the hits, or ask for a higher lowest frequency</source>
        <translation>der Schlag bei {0} s hat {1} s zum Ausklingen und bleibt weg: ab {2} Hz sind {3} s nötig; länger zwischen den Schlägen warten oder eine höhere unterste Frequenz wählen</translation>
    </message>
    <message>
        <location filename="../../../dsp/ringdown.py"/>
        <source>no hit can be used: {0}</source>
        <translation>kein Schlag ist brauchbar: {0}</translation>
    </message>
    <message>
        <location filename="../../../dsp/ringdown.py"/>
        <source>{0} hit: the intervals know nothing of what differs from hit to hit; hit {1} times or more</source>
        <translation>{0} Schlag: die Bereiche wissen nichts von dem, was von Schlag zu Schlag abweicht; {1}-mal oder öfter schlagen</translation>
    </message>
    <message>
        <location filename="../../../dsp/ringdown.py"/>
        <source>{0} hits: the intervals know nothing of what differs from hit to hit; hit {1} times or more</source>
        <translation>{0} Schläge: die Bereiche wissen nichts von dem, was von Schlag zu Schlag abweicht; {1}-mal oder öfter schlagen</translation>
    </message>
    <message>
        <location filename="../../../dsp/ringdown.py"/>
        <source>no clear hit: the loudest moment is {0} times the quiet level; a hit rises in a moment to {1} times that level and to {2} times whatever was before; let it stand still for a second, then hit once and wait until it has rung out</source>
        <translation>kein klarer Schlag: der lauteste Augenblick hat das {0}-Fache des Ruhepegels; ein Schlag steigt schlagartig auf das {1}-Fache davon und auf das {2}-Fache dessen, was vorher war; eine Sekunde ruhen lassen, dann einmal schlagen und ausklingen lassen</translation>
    </message>
    <message>
        <location filename="../../../dsp/standing.py"/>
        <source>{0} pulses, as of {1} r/min: the machine turned; stop it, isolate it, wait until it stands, and record again</source>
        <translation>{0} Impulse, wie bei {1} r/min: die Maschine drehte; abstellen, freischalten, den Stillstand abwarten und neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/standing.py"/>
        <source>speed {0} r/min: must be above 0; give the running speed of the machine</source>
        <translation>Drehzahl {0} r/min: muss größer als 0 sein; die Betriebsdrehzahl der Maschine angeben</translation>
    </message>
    <message>
        <location filename="../../../dsp/standing.py"/>
        <source>speed {0} r/min is more than 0.4 of the sample rate {1} Hz: record faster</source>
        <translation>Drehzahl {0} r/min ist mehr als das 0.4-Fache der Abtastrate {1} Hz: schneller abtasten</translation>
    </message>
    <message>
        <location filename="../../../dsp/standing.py"/>
        <source>{0} s with the machine stopped: need {1} s or more; record longer</source>
        <translation>{0} s bei stehender Maschine: {1} s oder mehr nötig; länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>{0} revolutions tell nothing about steadiness yet: record {1} s</source>
        <translation>{0} Umdrehungen sagen noch nichts über die Stabilität: {1} s aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>{0}: find and stop it</source>
        <translation>{0}: suchen und abstellen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>{0}: find and stop it, or record {1} s</source>
        <translation>{0}: suchen und abstellen, oder {1} s aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>{0}: averaged over {1} beats, it moves the mean by {2} % at most</source>
        <translation>{0}: über {1} Schwebungen gemittelt bewegt sie das Mittel um höchstens {2} %</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>a slow change, too short to tell drift from a second source: record {0} s</source>
        <translation>eine langsame Änderung, zu kurz, um Drift und zweite Quelle zu trennen: {0} s aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>a disturbance in a narrow band about {0} r/min beside the speed moves the vector by {1}° and {2} %: find it, or record longer</source>
        <translation>eine Störung in schmalem Band etwa {0} r/min neben der Drehzahl bewegt den Zeiger um {1}° und {2} %: suchen oder länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>the vector is as small as its scatter: its mean is known to {0} % only; </source>
        <translation>der Zeiger ist so klein wie seine Streuung: sein Mittel ist nur auf {0} % bekannt; </translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>{0}record {1} s for 10 %</source>
        <translation>{0}{1} s aufnehmen für 10 %</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>the phase follows the speed: hold the speed, or measure away from a resonance</source>
        <translation>die Phase folgt der Drehzahl: Drehzahl halten oder abseits einer Resonanz messen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>the vector still settles: let the machine run on, then record again</source>
        <translation>der Zeiger läuft noch ein: die Maschine weiterlaufen lassen, dann neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>the phase drifts by {0}°/min: let the machine settle, then record again</source>
        <translation>die Phase driftet um {0}°/min: die Maschine einlaufen lassen, dann neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>the vector wanders slowly, {0}° and {1} % peak to peak, so that it has no mean to speak of: look for a loose part, process changes or a bad pulse</source>
        <translation>der Zeiger wandert langsam, {0}° und {1} % von Spitze zu Spitze, so dass es kein brauchbares Mittel gibt: nach losem Teil, Prozessänderungen oder schlechtem Impuls suchen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>turns the phase through 360° every {0} s</source>
        <translation>dreht die Phase alle {0} s um 360°</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>swings the phase by {0}° every {1} s</source>
        <translation>schwenkt die Phase um {0}° alle {1} s</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>, or a strong tone far from the speed that looks like it (see the spectrum)</source>
        <translation>, oder ein starker Ton fern der Drehzahl, der so aussieht (siehe Spektrum)</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>a second source at {0} r/min, {1} times as strong{2}, {3}</source>
        <translation>eine zweite Quelle bei {0} r/min, {1}-mal so stark{2}, {3}</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>no resonance was seen between {0} and {1} r/min: no margin can be given</source>
        <translation>zwischen {0} und {1} r/min war keine Resonanz zu sehen: kein Abstand anzugeben</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>orders {0}: give each once, above 0</source>
        <translation>Ordnungen {0}: jede einmal angeben, größer als 0</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>tracker "{0}": {1}</source>
        <translation>Verfolgung „{0}“: {1}</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>a tone is tracked beside the orders by the Vold-Kalman filter only</source>
        <translation>ein Ton neben den Ordnungen wird nur mit dem Vold-Kalman-Filter verfolgt</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>{0} s between the first and the last pulse: record longer</source>
        <translation>{0} s zwischen erstem und letztem Impuls: länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>{0}: the response still rises at the highest speed: a resonance may lie above</source>
        <translation>{0}: die Antwort steigt bei der höchsten Drehzahl noch: darüber kann eine Resonanz liegen</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>slow roll is taken off displacement points only, and there is none; leave it out</source>
        <translation>der Langsamlauf wird nur an Messpunkten des Schwingwegs abgezogen, und es gibt keinen; weglassen</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>the speed changes too fast for the sharpest resonance, sweep number {0} where {1} is the limit: the curve peaks late and low, only the resonance figures allow for it; take {2} s or more for this sweep</source>
        <translation>die Drehzahl ändert sich zu schnell für die schärfste Resonanz, Durchlaufzahl {0} bei der Grenze {1}: die Kurve gipfelt zu spät und zu niedrig, nur die Werte der Resonanz berücksichtigen das; für diesen Durchlauf {2} s oder mehr nehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>{0} pulses were missing and {1} too many: look at the pulse sensor</source>
        <translation>{0} Impulse fehlten und {1} waren zu viel: den Impulssensor ansehen</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>a sweep without a change of speed: {0} to {1} r/min; record from standstill to running speed, or the coast-down</source>
        <translation>ein Durchlauf ohne Drehzahländerung: {0} bis {1} r/min; vom Stillstand bis zur Betriebsdrehzahl aufnehmen, oder den Auslauf</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>the speed passes {0} r/min, from where it can be tracked with a bandwidth of {1} Hz, only just or too quickly: sweep slower, or choose a narrower bandwidth</source>
        <translation>die Drehzahl überschreitet {0} r/min, ab wo sie mit der Bandbreite {1} Hz zu verfolgen ist, nur knapp oder zu schnell: langsamer durchfahren oder eine schmalere Bandbreite wählen</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>{0}: no slow roll below {1} r/min: the slowest speed tracked is {2} r/min; give a higher one or start slower</source>
        <translation>{0}: kein Langsamlauf unter {1} r/min: die kleinste verfolgte Drehzahl ist {2} r/min; eine höhere angeben oder langsamer beginnen</translation>
    </message>
    <message>
        <location filename="../../../dsp/sweep.py"/>
        <source>{0}: a resonance at {1} r/min is {2} % from running speed {3} r/min: phase and amplitude follow every change of speed there, and a balance holds for this speed and temperature only (rule of thumb: keep 20 %)</source>
        <translation>{0}: eine Resonanz bei {1} r/min liegt {2} % neben der Betriebsdrehzahl {3} r/min: Phase und Amplitude folgen dort jeder Drehzahländerung, und eine Auswuchtung hält nur für diese Drehzahl und Temperatur (Faustregel: 20 % Abstand halten)</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>a whole number</source>
        <translation>eine ganze Zahl</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>a number</source>
        <translation>eine Zahl</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>a text</source>
        <translation>ein Text</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>true or false</source>
        <translation>true oder false</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>a table</source>
        <translation>eine Tabelle</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>a list</source>
        <translation>eine Liste</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>{0}: is not a text file, but should be TOML</source>
        <translation>{0}: ist keine Textdatei, müsste aber TOML sein</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>is no ordinary file (a folder or a device); name a file</source>
        <translation>ist keine gewöhnliche Datei (ein Ordner oder ein Gerät); eine Datei nennen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>there is no such file</source>
        <translation>die Datei gibt es nicht</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>cannot be read: {0}</source>
        <translation>nicht lesbar: {0}</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>is no file name</source>
        <translation>ist kein Dateiname</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>is larger than {0} MiB; is it the right file?</source>
        <translation>ist größer als {0} MiB; ist es die richtige Datei?</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>is not valid TOML: {0}</source>
        <translation>ist kein gültiges TOML: {0}</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>has tables within tables, more than {0} deep</source>
        <translation>hat Tabellen in Tabellen, mehr als {0} tief</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>has a whole number of too many digits</source>
        <translation>hat eine ganze Zahl mit zu vielen Ziffern</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>has a whole number of more than 64 bits</source>
        <translation>hat eine ganze Zahl mit mehr als 64 Bit</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>has more than {0} entries</source>
        <translation>hat mehr als {0} Einträge</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>the {0} "{1}" is too long, at most {2} letters</source>
        <translation>„{1}“ ({0}) ist zu lang, höchstens {2} Zeichen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>the {0} "{1}" has a line end or a tab in it; write it in one line</source>
        <translation>„{1}“ ({0}) enthält einen Zeilenumbruch oder Tabulator; in eine Zeile schreiben</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>the text "{0}" is too long, at most {1} letters</source>
        <translation>der Text „{0}“ ist zu lang, höchstens {1} Zeichen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>the text "{0}" has a character that does not show ({1}); write it without</source>
        <translation>der Text „{0}“ hat ein unsichtbares Zeichen ({1}); ohne es schreiben</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>{0}{1}: unknown key; remove it or mend its spelling</source>
        <translation>{0}{1}: unbekannter Schlüssel; entfernen oder richtig schreiben</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>{0}{1}: is missing</source>
        <translation>{0}{1}: fehlt</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>{0}: must be {1}, not {2}</source>
        <translation>{0}: muss {1} sein, nicht {2}</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>another value</source>
        <translation>ein anderer Wert</translation>
    </message>
    <message>
        <location filename="../../../dsp/tables.py"/>
        <source>a text in it has halves of letters: it is damaged</source>
        <translation>ein Text darin hat halbe Zeichen: die Datei ist beschädigt</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>{0} pulses found: need {1} or more; check the pulse sensor or record longer</source>
        <translation>{0} Impulse gefunden: {1} oder mehr nötig; Impulssensor prüfen oder länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>{0} pulses missing and {1} too many of {2}: no steady once-per-rev pulse; check the mark, pulses_per_rev and the threshold</source>
        <translation>{0} Impulse fehlen und {1} zu viel von {2}: kein regelmäßiger Impuls je Umdrehung; Marke, Impulse je Umdrehung und Schwelle prüfen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>{0} pulses of the reference mark: need 3 or more; record longer</source>
        <translation>{0} Impulse der Bezugsmarke: 3 oder mehr nötig; länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>the speed jumps from one revolution to the next by {0} % at sample {1}: samples were lost or a pulse is bad; check the pulse and record again</source>
        <translation>die Drehzahl springt bei Abtastwert {1} von einer Umdrehung zur nächsten um {0} %: Abtastwerte gingen verloren oder ein Impuls ist schlecht; den Impuls prüfen und neu aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>reference = "missing": each of the {0} positions holds a mark, none is missing; check pulses_per_rev, which counts the missing one too</source>
        <translation>Bezugsmarke „fehlend“: an jeder der {0} Stellen sitzt eine Marke, keine fehlt; Impulse je Umdrehung prüfen, die fehlende zählt mit</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>reference = "wide": no mark is wider than the others ({0} and {1} samples); make the first one at least 1.5 times as wide</source>
        <translation>Bezugsmarke „breit“: keine Marke ist breiter als die anderen ({0} und {1} Abtastwerte); die erste mindestens 1.5-mal so breit machen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>the intervals do not repeat after {0} pulses: check pulses_per_rev and the mark, or record longer</source>
        <translation>die Abstände wiederholen sich nach {0} Impulsen nicht: Impulse je Umdrehung und Marke prüfen oder länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>reference = "unequal": the two longest gaps are {0}° and {1}°: too alike to tell which mark is 0; make one gap longer</source>
        <translation>Bezugsmarke „ungleich“: die zwei längsten Lücken sind {0}° und {1}°: zu ähnlich, um Marke 0 zu erkennen; eine Lücke vergrößern</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>{0} pulses of the reference mark: need 4 or more; record longer</source>
        <translation>{0} Impulse der Bezugsmarke: 4 oder mehr nötig; länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>{0} pulses per revolution and none of them marked as the first: the speed is {1} r/min, but there is no phase; say how the first is known: pulse.reference = "missing", "wide" or "unequal"</source>
        <translation>{0} Impulse je Umdrehung und keiner als erster gekennzeichnet: die Drehzahl ist {1} r/min, aber es gibt keine Phase; unter Bezugsmarke angeben, woran der erste zu erkennen ist: fehlend, breit oder ungleich</translation>
    </message>
    <message>
        <location filename="../../../dsp/tach.py"/>
        <source>no revolutions were numbered: record longer</source>
        <translation>keine Umdrehungen gezählt: länger aufnehmen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tracking.py"/>
        <source>{0} Hz is tracked, more than 0.4 of the sample rate {1} Hz; leave out high orders or record faster</source>
        <translation>{0} Hz werden verfolgt, mehr als das 0.4-Fache der Abtastrate {1} Hz; hohe Ordnungen weglassen oder schneller abtasten</translation>
    </message>
    <message>
        <location filename="../../../dsp/tracking.py"/>
        <source>windows of {0} s do not fit a sweep of {1} s; shorten them</source>
        <translation>Fenster von {0} s passen nicht zu einem Durchlauf von {1} s; kürzen</translation>
    </message>
    <message>
        <location filename="../../../dsp/tracking.py"/>
        <source>the orders do not part: the shaft hardly turns for long; leave its standstill out, or widen the bandwidth</source>
        <translation>die Ordnungen trennen sich nicht: die Welle dreht lange kaum; den Stillstand weglassen oder die Bandbreite vergrößern</translation>
    </message>
    <message>
        <location filename="../../../dsp/units.py"/>
        <source>{0}: "{1}" is not a number with a unit; write for example "2.5 {2}"</source>
        <translation>{0}: „{1}“ ist keine Zahl mit Einheit; zum Beispiel „2.5 {2}“ schreiben</translation>
    </message>
    <message>
        <location filename="../../../dsp/units.py"/>
        <source>"{0}" is not a unit of {1}</source>
        <translation>„{0}“ ist keine Einheit für {1}</translation>
    </message>
    <message>
        <location filename="../../../dsp/units.py"/>
        <source>{0}: "{1}" is not a speed; write for example "1480 rpm" or "50 Hz"</source>
        <translation>{0}: „{1}“ ist keine Drehzahl; zum Beispiel „1480 rpm“ oder „50 Hz“ schreiben</translation>
    </message>
    <message>
        <location filename="../../../dsp/units.py"/>
        <source>{0}: "{1}" is not a finite number</source>
        <translation>{0}: „{1}“ ist keine endliche Zahl</translation>
    </message>
    <message>
        <location filename="../../../dsp/units.py"/>
        <source>{0}: "{1}" needs a measure: write for example "mm/s rms", "mm/s peak" or "um p-p"</source>
        <translation>{0}: „{1}“ braucht ein Maß: zum Beispiel „mm/s rms“, „mm/s peak“ oder „um p-p“ schreiben</translation>
    </message>
    <message>
        <location filename="../../../dsp/units.py"/>
        <source>{0}: "{1}" is not a unit of displacement, velocity or acceleration</source>
        <translation>{0}: „{1}“ ist keine Einheit für Schwingweg, Schwinggeschwindigkeit oder Beschleunigung</translation>
    </message>
    <message>
        <location filename="../../../dsp/units.py"/>
        <source>{0}: "{1}" is too small for anything</source>
        <translation>{0}: „{1}“ ist für alles zu klein</translation>
    </message>
    <message>
        <location filename="../../../dsp/units.py"/>
        <source>{0}: "{1}" is too large for anything</source>
        <translation>{0}: „{1}“ ist für alles zu groß</translation>
    </message>
</context>
</TS>
