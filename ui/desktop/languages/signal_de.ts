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
        <location filename="../../../acquire/driver.py"/>
        <source>the source came to its end</source>
        <translation>die Quelle ist zu Ende</translation>
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
        <location filename="../../../acquire/simulated.py"/>
        <source>drive side</source>
        <translation>Antriebsseite</translation>
    </message>
    <message>
        <location filename="../../../acquire/simulated.py"/>
        <source>far side</source>
        <translation>Gegenseite</translation>
    </message>
    <message>
        <location filename="../../../acquire/simulated.py"/>
        <source>simulated rotor at {0} r/min</source>
        <translation>simulierter Rotor mit {0} r/min</translation>
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
        <translation>Handtaster</translation>
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
        <translation>ist nur {0} % vom Vollausschlag hoch</translation>
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
        <translation>übersteuert: {0} Werte am Vollausschlag</translation>
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
        <translation>erreicht {0} % vom Vollausschlag</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>lower the gain</source>
        <translation>Verstärkung senken</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>is weak: {0} % of full scale rms</source>
        <translation>ist schwach: {0} % vom Vollausschlag rms</translation>
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
        <translation>1x {0} {1}, Spitze {2} % vom Vollausschlag, {3}</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>comes twice a revolution, {0}° apart</source>
        <translation>kommt zweimal je Umdrehung, {0}° auseinander</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>a second bright spot, a key or a scratch: blacken it, or set pulses_per_rev</source>
        <translation>ein zweiter heller Fleck, Keil oder Kratzer: schwärzen oder Impulse je Umdrehung setzen</translation>
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
        <translation>seine Kanten streuen um {0}°</translation>
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
        <translation>, Kanten auf {0}°</translation>
    </message>
    <message>
        <location filename="../../../dsp/check.py"/>
        <source>{0} r/min, {1} edge, mark {2}° wide{3}</source>
        <translation>{0} r/min, {1} Kante, Marke {2}° breit{3}</translation>
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
        <location filename="../../../dsp/ringdown.py"/>
        <source>nothing rings between {0} and {1} Hz after {2} hits: hit harder with a softer, heavier hammer, or ask for other frequencies</source>
        <translation>nach {2} Schlägen klingt zwischen {0} und {1} Hz nichts aus: härter schlagen, mit weicherem, schwererem Hammer, oder andere Frequenzen wählen</translation>
    </message>
    <message>
        <location filename="../../../dsp/steadiness.py"/>
        <source>{0} revolutions tell nothing about steadiness yet: record {1} s</source>
        <translation>{0} Umdrehungen sagen noch nichts über die Stetigkeit: {1} s aufnehmen</translation>
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
        <location filename="../../../dsp/tach.py"/>
        <source>{0} pulses found: need {1} or more; check the pulse sensor or record longer</source>
        <translation>{0} Impulse gefunden: {1} oder mehr nötig; Impulssensor prüfen oder länger aufnehmen</translation>
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
</context>
</TS>
