<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>stillshaft</name>
    <message>
        <location filename="../../../solver/amplitude.py"/>
        <source>{0} amplitudes alone need the initial run and three trial positions for each plane, {1} runs; there are {2}: two positions leave a second, false solution</source>
        <translation>{0} Amplituden allein brauchen den Urlauf und drei Teststellen je Ebene, {1} Läufe; es sind {2}: zwei Stellen lassen eine zweite, falsche Lösung</translation>
    </message>
    <message>
        <location filename="../../../solver/capped.py"/>
        <source>quadratic {0} and {1}: must be finite (P, P) and (P,)</source>
        <translation>quadratische Form {0} und {1}: müssen endlich (P, P) und (P,) sein</translation>
    </message>
    <message>
        <location filename="../../../solver/capped.py"/>
        <source>quadratic: is not Hermitian; G must equal its own conjugate transpose</source>
        <translation>quadratische Form: ist nicht hermitesch; G muss gleich seiner konjugiert Transponierten sein</translation>
    </message>
    <message>
        <location filename="../../../solver/capped.py"/>
        <source>quadratic: curves downwards in some direction, so that there is no least</source>
        <translation>quadratische Form: fällt in einer Richtung, so dass es kein Minimum gibt</translation>
    </message>
    <message>
        <location filename="../../../solver/capped.py"/>
        <source>quadratic: falls without end where it is flat; g must lie in the range of G</source>
        <translation>quadratische Form: fällt endlos, wo sie flach ist; g muss im Bild von G liegen</translation>
    </message>
    <message>
        <location filename="../../../solver/capped.py"/>
        <source>the least may be lower by {0}: the cone solver found no proof</source>
        <translation>das Minimum kann um {0} niedriger sein: die Rechnung fand keinen Beweis</translation>
    </message>
    <message>
        <location filename="../../../solver/capped.py"/>
        <source>not proven</source>
        <translation>nicht bewiesen</translation>
    </message>
    <message>
        <location filename="../../../solver/capped.py"/>
        <source>vibration {0} and influence {1}: must be (M,) and (M, P) with a point or more</source>
        <translation>Schwingung {0} und Einfluss {1}: müssen (M,) und (M, P) sein, mit mindestens einem Messpunkt</translation>
    </message>
    <message>
        <location filename="../../../solver/capped.py"/>
        <source>vibration or influence: a value is not finite</source>
        <translation>Schwingung oder Einfluss: ein Wert ist nicht endlich</translation>
    </message>
    <message>
        <location filename="../../../solver/capped.py"/>
        <source>weights {0}: give a finite number, 0 or more, for each of the {1} points</source>
        <translation>Gewichte {0}: für jeden der {1} Messpunkte eine endliche Zahl angeben, 0 oder mehr</translation>
    </message>
    <message>
        <location filename="../../../solver/capped.py"/>
        <source>caps {0}: give a mass above 0, or None, for each of the {1} planes</source>
        <translation>Obergrenzen {0}: für jede der {1} Ebenen eine Masse größer als 0 oder None angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/consistency.py"/>
        <source>the runs do not fit each other (p = {0})</source>
        <translation>die Läufe passen nicht zueinander (p = {0})</translation>
    </message>
    <message>
        <location filename="../../../solver/consistency.py"/>
        <source>repeatability and linearity are not checkable yet: there are only as many runs as unknowns; a repeated initial run would show both drift and wrong entries</source>
        <translation>Wiederholbarkeit und Linearität sind noch nicht prüfbar: es gibt nur so viele Läufe wie Unbekannte; ein wiederholter Urlauf würde Drift und falsche Einträge zeigen</translation>
    </message>
    <message>
        <location filename="../../../solver/consistency.py"/>
        <source>the initial state moved between "{0}" and "{1}": {2} by {3} % and {4}°, more than the scatter explains; find out why before going on</source>
        <translation>der Urzustand hat sich zwischen „{0}“ und „{1}“ verschoben: {2} um {3} % und {4}°, mehr als die Streuung erklärt; vor dem Weitermachen den Grund finden</translation>
    </message>
    <message>
        <location filename="../../../solver/consistency.py"/>
        <source>it would fit if </source>
        <translation>es würde passen, wenn gilt: </translation>
    </message>
    <message>
        <location filename="../../../solver/consistency.py"/>
        <source>or if </source>
        <translation>oder wenn gilt: </translation>
    </message>
    <message>
        <location filename="../../../solver/consistency.py"/>
        <source>no single wrong entry or change explains it: repeat the initial run to see the scatter</source>
        <translation>kein einzelner falscher Eintrag und keine einzelne Änderung erklärt es: den Urlauf wiederholen, um die Streuung zu sehen</translation>
    </message>
    <message>
        <location filename="../../../solver/consistency.py"/>
        <source>the mass put on in run "{0}" was {1} times what was entered, {2}° from there</source>
        <translation>die in Lauf „{0}“ angebrachte Masse war das {1}-Fache der eingetragenen, {2}° davon entfernt</translation>
    </message>
    <message>
        <location filename="../../../solver/consistency.py"/>
        <source>the initial state changed before run "{0}"</source>
        <translation>der Urzustand änderte sich vor Lauf „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/consistency.py"/>
        <source>all angles were counted the other way round, with rotation</source>
        <translation>alle Winkel wurden andersherum gezählt, mit dem Drehsinn</translation>
    </message>
    <message>
        <location filename="../../../solver/consistency.py"/>
        <source>repeatability {0} % and {1}° is taken from {2} runs without masses and what is usual</source>
        <translation>die Wiederholbarkeit {0} % und {1}° folgt aus {2} Läufen ohne Massen und dem Üblichen</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>plane "{0}": not determined, because {1}</source>
        <translation>Ebene „{0}“: nicht bestimmt, weil {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>to add: {0}</source>
        <translation>hinzuzufügen: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>worked out from amplitudes alone: phases that are shown count from each point's initial vector</source>
        <translation>nur aus Amplituden gerechnet: gezeigte Phasen zählen ab dem Zeiger des Urlaufs an jedem Messpunkt</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>method {0}: cannot be used; choose {1} or {2}</source>
        <translation>Verfahren {0}: nicht verwendbar; {1} oder {2} wählen</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>parts {0}: choose {1} or {2}</source>
        <translation>Anteile {0}: {1} oder {2} wählen</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>{0}: has no plane "{1}"; it has {2}</source>
        <translation>{0}: hat keine Ebene „{1}“; es gibt {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>{0}: has no point "{1}"; it has {2}</source>
        <translation>{0}: hat keinen Messpunkt „{1}“; es gibt {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>every point is left out; keep at least one</source>
        <translation>jeder Messpunkt ist weggelassen; mindestens einen behalten</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>{0} part: takes two planes, both of them; there are {1}</source>
        <translation>Anteil „{0}“: braucht zwei Ebenen, und zwar beide; es sind {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>plane {0}: takes no mass, as asked</source>
        <translation>Ebene {0}: nimmt wie gewünscht keine Masse</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>{0} part: the planes have none; their places along the shaft (z) must differ</source>
        <translation>Anteil „{0}“: bei diesen Ebenen gibt es keinen; ihre Lagen längs der Welle (z) müssen verschieden sein</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>three planes or more: solved for the least residual to be expected</source>
        <translation>drei Ebenen oder mehr: gerechnet auf den kleinsten zu erwartenden Rest</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>the planes do nearly the same (condition {0}): solved for the least residual to be expected; one plane alone, or a point that tells them apart, may serve better</source>
        <translation>die Ebenen wirken fast gleich (Kondition {0}): gerechnet auf den kleinsten zu erwartenden Rest; eine Ebene allein oder ein Messpunkt, der sie trennt, kann besser dienen</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>plane {0}: stopped at its cap, {1}; without it, it would take more</source>
        <translation>Ebene {0}: durch ihre Obergrenze {1} begrenzt; ohne diese nähme sie mehr auf</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>its region has no end: the trial moved the points too little; use a larger mass</source>
        <translation>ihr Gebiet hat kein Ende: der Test bewegte die Messpunkte zu wenig; eine größere Masse nehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>{0} is to be preferred: {1}</source>
        <translation>{0} ist vorzuziehen: {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/correction.py"/>
        <source>{0} (method minimax)</source>
        <translation>{0} (Verfahren minimax)</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>static part alone</source>
        <translation>statischer Anteil allein</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>couple alone</source>
        <translation>Momentenanteil allein</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>all planes</source>
        <translation>alle Ebenen</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>static part, then couple</source>
        <translation>statischer Anteil, dann Momentenanteil</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>static and couple: {0} planes; two or more are needed</source>
        <translation>statisch und Momentenanteil: {0} Ebenen; zwei oder mehr sind nötig</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>static and couple: places {0}: give a finite z, or none, for each of {1} planes</source>
        <translation>statisch und Momentenanteil: Lagen {0}: für jede von {1} Ebenen ein endliches z angeben, oder keines</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>static and couple: more than two planes need their places along the shaft (z)</source>
        <translation>statisch und Momentenanteil: mehr als zwei Ebenen brauchen ihre Lagen längs der Welle (z)</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>static and couple: the first and the last plane are at one place and carry no couple</source>
        <translation>statisch und Momentenanteil: erste und letzte Ebene liegen an einem Ort und tragen keinen Momentenanteil</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>static and couple: centre of mass {0} mm must be finite</source>
        <translation>statisch und Momentenanteil: Schwerpunkt {0} mm muss endlich sein</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>plane "{0}" alone</source>
        <translation>Ebene „{0}“ allein</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>split evenly over the planes: their places along the shaft (z) are not given</source>
        <translation>gleichmäßig auf die Ebenen verteilt: ihre Lagen längs der Welle (z) sind nicht angegeben</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>taken at the middle of the planes: the centre of mass is not given</source>
        <translation>bezogen auf die Mitte der Ebenen: der Schwerpunkt ist nicht angegeben</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>a {0} part</source>
        <translation>ein Anteil „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>mix {0} of the planes</source>
        <translation>Mischung {0} der Ebenen</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>do not tell</source>
        <translation>zeigen nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>the runs {0} {1}: its effect is {2} standard deviations, {3} are needed</source>
        <translation>die Läufe {0}: {1}; die Wirkung beträgt {2} Standardabweichungen, nötig sind {3}</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>the runs cannot tell {0}: there are fewer points than planes</source>
        <translation>die Läufe können {0} nicht zeigen: es gibt weniger Messpunkte als Ebenen</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>{0} would leave little less, with {1} the mass</source>
        <translation>{0} würde kaum weniger lassen; Masse: {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>neither one plane nor the static part alone is determined</source>
        <translation>weder eine Ebene noch der statische Anteil allein ist bestimmt</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>overhung: one plane, or the static part, first</source>
        <translation>fliegend: zuerst eine Ebene oder der statische Anteil</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>; the couple that the axial or far-bearing vibration asks for is not determined</source>
        <translation>; der Momentenanteil, den die Schwingung axial oder am fernen Lager verlangt, ist nicht bestimmt</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>; axial and far-bearing vibration is expected to stay at {0}, within the goal of {1}</source>
        <translation>; die Schwingung axial und am fernen Lager bleibt voraussichtlich bei {0}, innerhalb des Ziels von {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>; a couple only if axial or far-bearing vibration stays above the goal</source>
        <translation>; den Momentenanteil nur, wenn die Schwingung axial oder am fernen Lager über dem Ziel bleibt</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>overhung: all planes would take large opposed masses, {0} as much; the static part alone first, then measure</source>
        <translation>fliegend: alle Ebenen brauchten große gegenüberliegende Massen, {0}; zuerst der statische Anteil allein, dann messen</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>overhung: {0} would leave {1} at an axial or far-bearing point, above the goal of {2}; the couple is added as an opposed pair that leaves the static part unchanged</source>
        <translation>fliegend: {0} würde {1} an einem axialen Messpunkt oder am fernen Lager lassen, über dem Ziel von {2}; der Momentenanteil kommt als gegenüberliegendes Paar hinzu, das den statischen Anteil nicht ändert</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>many times</source>
        <translation>ein Vielfaches</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>{0}: {1} % of the vibration is to be expected</source>
        <translation>{0}: {1} % der Schwingung sind zu erwarten</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>, with {0} {1} in all</source>
        <translation>, mit insgesamt {0} {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>, as much as the caps allow</source>
        <translation>, so viel die Obergrenzen erlauben</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>; not determined: the runs do not tell its effect from the scatter</source>
        <translation>; nicht bestimmt: die Läufe trennen die Wirkung nicht von der Streuung</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>{0}: its unknowns share a plane that has a cap; solve it without caps</source>
        <translation>{0}: seine Unbekannten teilen sich eine Ebene mit Obergrenze; ohne Obergrenzen rechnen</translation>
    </message>
    <message>
        <location filename="../../../solver/enumeration.py"/>
        <source>{0} pieces, up to {1} % of the initial vibration</source>
        <translation>{0} Stücke, bis {1} % der Schwingung im Urlauf</translation>
    </message>
    <message>
        <location filename="../../../solver/handwork.py"/>
        <source>stainless steel</source>
        <translation>Edelstahl</translation>
    </message>
    <message>
        <location filename="../../../solver/handwork.py"/>
        <source>cast iron</source>
        <translation>Gusseisen</translation>
    </message>
    <message>
        <location filename="../../../solver/handwork.py"/>
        <source>{0} {1}: must be above 0</source>
        <translation>{0} {1}: muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/handwork.py"/>
        <source>{0}° and {1}° are in line: no two masses there make another angle</source>
        <translation>{0}° und {1}° liegen auf einer Linie: zwei Massen dort ergeben keinen anderen Winkel</translation>
    </message>
    <message>
        <location filename="../../../solver/handwork.py"/>
        <source>the nearest positions, {0}° and {1}°, are 180° apart or more: no two masses there make the angle between</source>
        <translation>die nächsten Stellen, {0}° und {1}°, liegen 180° oder mehr auseinander: zwei Massen dort ergeben den Winkel dazwischen nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/handwork.py"/>
        <source>material "{0}": is not known; there is {1}, or write "7850 kg/m^3"</source>
        <translation>Werkstoff „{0}“: nicht bekannt; es gibt {1}, oder „7850 kg/m^3“ schreiben</translation>
    </message>
    <message>
        <location filename="../../../solver/handwork.py"/>
        <source>drill point {0}°: must be above 0° and at most 180°; 118° and 140° are usual</source>
        <translation>Bohrerspitze {0}°: muss größer als 0° und höchstens 180° sein; üblich sind 118° und 140°</translation>
    </message>
    <message>
        <location filename="../../../solver/handwork.py"/>
        <source>recovery {0} %: must be above 0 % and at most 100 %; weigh a trial bead</source>
        <translation>Ausbringung {0} %: muss größer als 0 % und höchstens 100 % sein; eine Proberaupe wiegen</translation>
    </message>
    <message>
        <location filename="../../../solver/influence.py"/>
        <source>its trial moved no point beyond the scatter; use a larger mass</source>
        <translation>ihr Test bewegte keinen Messpunkt über die Streuung hinaus; eine größere Masse nehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/influence.py"/>
        <source>there are fewer points than planes; measure at another point or speed, or correct fewer planes</source>
        <translation>es gibt weniger Messpunkte als Ebenen; an einem weiteren Messpunkt oder bei einer weiteren Drehzahl messen, oder weniger Ebenen ausgleichen</translation>
    </message>
    <message>
        <location filename="../../../solver/influence.py"/>
        <source>its effect cannot be told from the other planes' beyond the scatter; use larger trial masses, another point, or fewer planes</source>
        <translation>ihre Wirkung ist über die Streuung hinaus nicht von der anderer Ebenen zu trennen; größere Testmassen, einen weiteren Messpunkt oder weniger Ebenen nehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/influence.py"/>
        <source>{0}: plane: there is none; add a [[plane]] for each correction plane</source>
        <translation>{0}: plane: es gibt keine; für jede Ausgleichsebene eine [[plane]] hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../solver/influence.py"/>
        <source>{0}: at {1} r/min</source>
        <translation>{0}: bei {1} r/min</translation>
    </message>
    <message>
        <location filename="../../../solver/influence.py"/>
        <source>{0} there is no trial run with a mass on plane "{1}"; take one</source>
        <translation>{0} es gibt keinen Testlauf mit einer Masse in Ebene „{1}“; einen machen</translation>
    </message>
    <message>
        <location filename="../../../solver/influence.py"/>
        <source>{0} there is no initial run without masses; take one</source>
        <translation>{0} es gibt keinen Urlauf ohne Massen; einen machen</translation>
    </message>
    <message>
        <location filename="../../../solver/influence.py"/>
        <source>{0} the runs do not tell the planes apart; take a trial run for each plane alone</source>
        <translation>{0} die Läufe trennen die Ebenen nicht; für jede Ebene allein einen Testlauf machen</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>{0} g·mm per kg of journal load and plane, divided by the speed in r/min</source>
        <translation>{0} g·mm je kg Zapfenlast und Ebene, geteilt durch die Drehzahl in r/min</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source> up to {0}</source>
        <translation> bis {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>limits "{0}": is neither a file nor a built-in table; there is {1}</source>
        <translation>Grenzwerte „{0}“: weder eine Datei noch eine eingebaute Tabelle; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>balance grades</source>
        <translation>Gütestufen</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>journal load</source>
        <translation>Zapfenlast</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>kind: must be "vibration", "balance grades" or "journal load"</source>
        <translation>kind: muss "vibration", "balance grades" oder "journal load" sein</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>{0}: is empty; say where the limits come from</source>
        <translation>{0}: ist leer; angeben, woher die Grenzwerte stammen</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>{0}: {1} must be above 0 and finite</source>
        <translation>{0}: {1} muss größer als 0 und endlich sein</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>{0}: {1} stands after {2}; write them in rising order</source>
        <translation>{0}: {1} steht nach {2}; in steigender Folge schreiben</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>machine {0}.grade: {1} is none of the grades</source>
        <translation>machine {0}.grade: {1} ist keine der Gütestufen</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>usual: {0} is none of the grades</source>
        <translation>usual: {0} ist keine der Gütestufen</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>shares: "{0}" is missing</source>
        <translation>shares: „{0}“ fehlt</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>shares "{0}": least {1} and most {2} are not in order</source>
        <translation>shares „{0}“: least {1} und most {2} stehen nicht in der Reihenfolge</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>limits: name at least one, each once</source>
        <translation>limits: mindestens einen nennen, jeden einmal</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>zones: {0} names; {1} limits part {2} zones</source>
        <translation>zones: {0} Namen; {1} Grenzwerte trennen {2} Zonen</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>accept: "{0}" is none of the limits; there is {1}</source>
        <translation>accept: „{0}“ ist keiner der Grenzwerte; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>class: there is none; add a [[class]] with its values</source>
        <translation>class: es gibt keine; eine [[class]] mit ihren Werten hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>class "{0}"</source>
        <translation>Klasse „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>{0}.values: {1} values; there are {2} limits</source>
        <translation>{0}.values: {1} Werte; es gibt {2} Grenzwerte</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>{0}: stands there twice</source>
        <translation>{0}: steht zweimal da</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>machine "{0}": has no usual grade in {1}; there is {2}, or give a grade</source>
        <translation>Maschine „{0}“: hat in {1} keine übliche Gütestufe; es gibt {2}, oder eine Gütestufe angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>machine "{0}": its grade depends on the highest service speed; give it as --speed</source>
        <translation>Maschine „{0}“: ihre Gütestufe hängt von der höchsten Betriebsdrehzahl ab; mit --speed angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/limit_tables.py"/>
        <source>machine "{0}": {1} has no grade for it at {2} r/min; give a grade</source>
        <translation>Maschine „{0}“: {1} hat bei {2} r/min keine Gütestufe dafür; eine Gütestufe angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>bearing A</source>
        <translation>Lager A</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>bearing B</source>
        <translation>Lager B</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>not applicable</source>
        <translation>nicht anwendbar</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>grade "{0}": is none; choose one of {1}</source>
        <translation>Gütestufe „{0}“: gibt es nicht; eine wählen von {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>{0}: not applicable, because the rotor runs above a resonance of its own and bends: such limits are for rigid rotors; vibration limits decide</source>
        <translation>{0}: nicht anwendbar, weil der Rotor über einer eigenen Resonanz läuft und sich biegt: solche Grenzen gelten für starre Rotoren; Schwingungsgrenzwerte entscheiden</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>no runs file given: only what is permissible can be told</source>
        <translation>keine Laufdatei angegeben: nur das Zulässige lässt sich nennen</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>G{0} is usual for this machine, {1} ({2})</source>
        <translation>G{0} ist für diese Maschine üblich, {1} ({2})</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>neither grade nor machine given: G{0}, usual for general machinery, is assumed</source>
        <translation>weder Gütestufe noch Maschine angegeben: G{0}, üblich für allgemeine Maschinen, wird angenommen</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>usual for this machine, {0}, is G{1} ({2})</source>
        <translation>üblich für diese Maschine, {0}, ist G{1} ({2})</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>rotor mass: is missing; give it as --rotor-mass "80 kg" or in the [rotor] table</source>
        <translation>Rotormasse: fehlt; mit --rotor-mass "80 kg" oder in der Tabelle [rotor] angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>rotor mass: {0} kg must be above 0 and finite</source>
        <translation>Rotormasse: {0} kg muss größer als 0 und endlich sein</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>speed: is missing; give the highest service speed as --speed RPM or in the [rotor] table</source>
        <translation>Drehzahl: fehlt; die höchste Betriebsdrehzahl mit --speed RPM oder in der Tabelle [rotor] angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>speed: {0} r/min must be above 0 and finite</source>
        <translation>Drehzahl: {0} r/min muss größer als 0 und endlich sein</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>bearing span: {0} mm must be above 0 and finite</source>
        <translation>Lagerabstand: {0} mm muss größer als 0 und endlich sein</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>centre of mass: {0} mm is not between the bearings, 0 to {1} mm; mend it, or say that the rotor is overhung with --overhung or kind = "overhung"</source>
        <translation>Schwerpunkt: {0} mm liegt nicht zwischen den Lagern, 0 bis {1} mm; berichtigen, oder mit --overhung oder kind = "overhung" sagen, dass der Rotor fliegend gelagert ist</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>the last run was at {0} r/min, above the highest service speed of {1} r/min that the limit is for</source>
        <translation>der letzte Lauf war bei {0} r/min, über der höchsten Betriebsdrehzahl von {1} r/min, für die der Grenzwert gilt</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>whole rotor</source>
        <translation>ganzer Rotor</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>bearing span or centre of mass not given: the permissible unbalance is split evenly over the planes</source>
        <translation>Lagerabstand oder Schwerpunkt nicht angegeben: die zulässige Unwucht ist gleichmäßig auf die Ebenen verteilt</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>the planes' places along the shaft (z) are not given: their residuals are taken as at the bearings</source>
        <translation>die Lagen der Ebenen längs der Welle (z) sind nicht angegeben: ihre Restunwuchten gelten wie an den Lagern</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>the planes' places along the shaft (z) are not given: the residual at the bearings cannot be told</source>
        <translation>die Lagen der Ebenen längs der Welle (z) sind nicht angegeben: die Restunwucht an den Lagern ist nicht anzugeben</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>split: {0} has no [static_couple] table</source>
        <translation>Aufteilung: {0} hat keine Tabelle [static_couple]</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>split: static and couple are for overhung rotors; split by the bearings, or say --overhung</source>
        <translation>Aufteilung: statisch und Momentenanteil gilt für fliegend gelagerte Rotoren; nach den Lagern aufteilen oder --overhung angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>split: static and couple need the bearing span and a runs file with two planes, each with its z</source>
        <translation>Aufteilung: statisch und Momentenanteil braucht den Lagerabstand und eine Laufdatei mit zwei Ebenen, jede mit ihrem z</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>split: static and couple need two planes apart; their z is the same</source>
        <translation>Aufteilung: statisch und Momentenanteil braucht zwei getrennte Ebenen; ihr z ist gleich</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>static and couple: {0}</source>
        <translation>statisch und Momentenanteil: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/limits.py"/>
        <source>there are no runs: only what is permissible can be told</source>
        <translation>es gibt keine Läufe: nur das Zulässige lässt sich sagen</translation>
    </message>
    <message>
        <location filename="../../../solver/minimax.py"/>
        <source>limits {0}: give an amplitude above 0, or None, for each of the {1} points</source>
        <translation>Grenzwerte {0}: für jeden der {1} Messpunkte eine Amplitude größer als 0 oder None angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/minimax.py"/>
        <source>limits: none of the points has one; state the limit that is to be met</source>
        <translation>Grenzwerte: kein Messpunkt hat einen; den einzuhaltenden angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/minimax.py"/>
        <source>the correction meets every limit, as far as the coefficients say</source>
        <translation>der Ausgleich hält jeden Grenzwert ein, so weit die Koeffizienten es sagen</translation>
    </message>
    <message>
        <location filename="../../../solver/minimax.py"/>
        <source>the limit of one point</source>
        <translation>den Grenzwert eines Messpunkts</translation>
    </message>
    <message>
        <location filename="../../../solver/minimax.py"/>
        <source>the limits of {0} points</source>
        <translation>die Grenzwerte von {0} Messpunkten</translation>
    </message>
    <message>
        <location filename="../../../solver/minimax.py"/>
        <source>the correction breaks {0}; the least largest share meets all of them with {1} % of the worst limit used, scatter not counted</source>
        <translation>der Ausgleich verletzt {0}; der kleinste größte Anteil hält alle ein, mit {1} % des ungünstigsten Grenzwerts ausgenutzt, ohne Streuung</translation>
    </message>
    <message>
        <location filename="../../../solver/minimax.py"/>
        <source>the correction breaks {0}; whether any masses meet all of them is too close to tell</source>
        <translation>der Ausgleich verletzt {0}; ob Massen alle einhalten, ist zu knapp für ein Urteil</translation>
    </message>
    <message>
        <location filename="../../../solver/minimax.py"/>
        <source> and the caps of the planes</source>
        <translation> und den Obergrenzen der Ebenen</translation>
    </message>
    <message>
        <location filename="../../../solver/minimax.py"/>
        <source>the correction breaks {0}, and no masses meet all of them: {1} % of a limit is the least with these planes{2}</source>
        <translation>der Ausgleich verletzt {0}, und keine Massen halten alle ein: {1} % eines Grenzwerts sind das Wenigste mit diesen Ebenen{2}</translation>
    </message>
    <message>
        <location filename="../../../solver/pieces.py"/>
        <source>aim {0}: cannot be used; choose {1}</source>
        <translation>Ziel {0}: nicht verwendbar; wählen: {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/pieces.py"/>
        <source>pieces that come out at one angle sit side by side, evenly about it</source>
        <translation>Stücke, die auf denselben Winkel kommen, sitzen nebeneinander, gleichmäßig um ihn</translation>
    </message>
    <message>
        <location filename="../../../solver/pieces.py"/>
        <source>no choice of the stock stays below {0} {1}; this is the best there is</source>
        <translation>keine Auswahl aus dem Vorrat bleibt unter {0} {1}; dies ist die beste</translation>
    </message>
    <message>
        <location filename="../../../solver/pieces.py"/>
        <source>run "{0}": nothing is on the rotor that could be combined</source>
        <translation>Lauf „{0}“: auf dem Rotor sitzt nichts, was sich zusammenfassen lässt</translation>
    </message>
    <message>
        <location filename="../../../solver/pieces.py"/>
        <source>the stock does not make the same masses to {0} %: the nearest is off by {1} {2}; allow more, or get other pieces</source>
        <translation>der Vorrat ergibt dieselben Massen nicht auf {0} %: die nächste Auswahl liegt {1} {2} daneben; mehr zulassen oder andere Stücke besorgen</translation>
    </message>
    <message>
        <location filename="../../../solver/pieces.py"/>
        <source>goal {0}: must be above 0</source>
        <translation>Ziel {0}: muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/pieces.py"/>
        <source>fewest pieces need to know what is enough: give a goal, or a [[limit]] above 0 for "{0}"</source>
        <translation>für möglichst wenige Stücke muss feststehen, was genügt: ein Ziel angeben, oder ein [[limit]] größer als 0 für „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/pieces.py"/>
        <source>plane "{0}": one piece a position, the file does not say per_position</source>
        <translation>Ebene „{0}“: ein Stück je Stelle, die Datei nennt kein per_position</translation>
    </message>
    <message>
        <location filename="../../../solver/pieces.py"/>
        <source>plane "{0}": pieces at any angle, the file does not say positions</source>
        <translation>Ebene „{0}“: Stücke unter beliebigem Winkel, die Datei nennt keine Stellen</translation>
    </message>
    <message>
        <location filename="../../../solver/placement.py"/>
        <source>no piece of the stock fits any allowed position; look at blocked, cap and position_cap</source>
        <translation>kein Stück des Vorrats passt auf eine erlaubte Stelle; gesperrte Stellen, Obergrenze der Ebene und der Stelle ansehen</translation>
    </message>
    <message>
        <location filename="../../../solver/placement.py"/>
        <source>base {0}, influence {1}, weights {2}, {3} planes do not fit</source>
        <translation>Grundschwingung {0}, Einfluss {1}, Gewichte {2} und {3} Ebenen passen nicht zusammen</translation>
    </message>
    <message>
        <location filename="../../../solver/placement.py"/>
        <source>base, influence and weights must be finite, weights above 0</source>
        <translation>Grundschwingung, Einfluss und Gewichte müssen endlich sein, Gewichte größer als 0</translation>
    </message>
    <message>
        <location filename="../../../solver/placement.py"/>
        <source>there is no plane to place pieces in; add a [[plane]]</source>
        <translation>es gibt keine Ebene für Stücke; eine Ebene ([[plane]]) hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../solver/placement.py"/>
        <source>no stock: say which pieces are at hand, such as [[stock]] mass = "5 g", count = 10</source>
        <translation>kein Vorrat: angeben, welche Stücke da sind, etwa [[stock]] mass = "5 g", count = 10</translation>
    </message>
    <message>
        <location filename="../../../solver/placement.py"/>
        <source>stock {0}: {1} pieces of {2}: a mass must not be 0, nor a count below it</source>
        <translation>Vorrat {0}: {1} Stücke von {2}: eine Masse darf nicht 0 sein und eine Anzahl nicht darunter</translation>
    </message>
    <message>
        <location filename="../../../solver/placement.py"/>
        <source>plane {0}: all positions are blocked; free one</source>
        <translation>Ebene {0}: alle Stellen sind gesperrt; eine freigeben</translation>
    </message>
    <message>
        <location filename="../../../solver/placement.py"/>
        <source>at most {0} pieces: must be 0 or more</source>
        <translation>höchstens {0} Stücke: muss 0 oder mehr sein</translation>
    </message>
    <message>
        <location filename="../../../solver/residual.py"/>
        <source>the residual unbalance cannot be told from amplitudes alone: the last run has no phase</source>
        <translation>die Restunwucht ist aus Amplituden allein nicht anzugeben: der letzte Lauf hat keine Phase</translation>
    </message>
    <message>
        <location filename="../../../solver/residual.py"/>
        <source>the residual unbalance cannot be told: plane {0} has no radius</source>
        <translation>die Restunwucht ist nicht anzugeben: Ebene {0} hat keinen Radius</translation>
    </message>
    <message>
        <location filename="../../../solver/residual.py"/>
        <source>the residual unbalance cannot be told: {0}</source>
        <translation>die Restunwucht ist nicht anzugeben: {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/residual.py"/>
        <source>plane "{0}": the residual unbalance cannot be told, because {1}</source>
        <translation>Ebene „{0}“: die Restunwucht ist nicht anzugeben, weil {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>2 % 2 deg</source>
        <translation>2 % 2 Grad</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>1 % 2 deg</source>
        <translation>1 % 2 Grad</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}: "{1}": write percent and degrees, such as "2 % 2 deg"</source>
        <translation>{0}: „{1}“: Prozent und Grad schreiben, etwa „2 % 2 deg“</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>speed_tolerance: "{0}": write percent, such as "2 %"</source>
        <translation>speed_tolerance: „{0}“: Prozent schreiben, etwa „2 %“</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>speed_tolerance: "{0}": is more than {1} %; runs so far apart have coefficients of their own; "2 %" is usual</source>
        <translation>speed_tolerance: „{0}“: ist mehr als {1} %; so weit getrennte Läufe haben eigene Koeffizienten; üblich sind „2 %“</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>, {0} or more</source>
        <translation>, {0} oder mehr</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}: {1} must be a finite number{2}</source>
        <translation>{0}: {1} muss eine endliche Zahl sein{2}</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}: {1} is too large, at most {2}; is it in the right unit?</source>
        <translation>{0}: {1} ist zu groß, höchstens {2}; stimmt die Einheit?</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0} {1}.name: "{2}" is empty or used twice; each {3} needs its own name</source>
        <translation>{0} {1}.name: „{2}“ ist leer oder doppelt; jeder Eintrag {3} braucht einen eigenen Namen</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>run: there is none; a runs file needs an initial run and a trial run for each plane</source>
        <translation>run: es gibt keinen; eine Laufdatei braucht einen Urlauf und je Ebene einen Testlauf</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>run "{0}".vectors: is empty; give amplitude and phase of at least one point</source>
        <translation>Lauf „{0}“, Zeiger: leer; Amplitude und Phase mindestens eines Messpunkts angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>run 1.vectors: {0} are no [[point]] of this file</source>
        <translation>Lauf 1, Zeiger: {0} sind kein [[point]] dieser Datei</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0} {1} is assumed: the file does not say</source>
        <translation>{0} {1} angenommen: die Datei sagt es nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>limit: "{0}" is no point of this file; there is {1}</source>
        <translation>Grenzwert: „{0}“ ist kein Messpunkt dieser Datei; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>limit "{0}".amplitude</source>
        <translation>Amplitude des Grenzwerts „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>point "{0}".angle</source>
        <translation>Winkel des Messpunkts „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>plane "{0}"</source>
        <translation>Ebene „{0}“</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.radii: the plane has no radius of its own to compare with; give it one</source>
        <translation>{0}.radii: die Ebene hat keinen eigenen Radius zum Vergleich; einen angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.per_position: {1}: must be 1 or more</source>
        <translation>{0}.per_position: {1}: muss 1 oder mehr sein</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.positions: {1}: must be 1 to {2}</source>
        <translation>{0}.positions: {1}: muss 1 bis {2} sein</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.positions: {1} angles: must be 1 to {2}</source>
        <translation>{0}.positions: {1} Winkel: müssen 1 bis {2} sein</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.blocked: names positions, but the plane has none; give positions = 24 or a list</source>
        <translation>{0}.blocked: nennt Stellen, aber die Ebene hat keine; positions = 24 oder eine Liste angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.blocked: position {1} does not exist; there are 1 to {2}</source>
        <translation>{0}.blocked: Stelle {1} gibt es nicht; es gibt 1 bis {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>stock {0}.mass</source>
        <translation>Masse im Vorrat, {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>stock {0}.count: {1}: must be 0 or more</source>
        <translation>Anzahl im Vorrat, {0}: {1}: muss 0 oder mehr sein</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>run "{0}".vectors."{1}"</source>
        <translation>Lauf „{0}“, Zeiger „{1}“</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.phase: is missing, but others have one; give it in every run or in none</source>
        <translation>{0}.phase: fehlt, andere haben eine; in jedem Lauf angeben oder in keinem</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>rotor.mass: "{0}" must be above 0</source>
        <translation>Rotormasse: „{0}“ muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.initial_state: {1}: must be 1 to {2}, counted up in order</source>
        <translation>{0}.initial_state: {1}: muss 1 bis {2} sein, der Reihe nach gezählt</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.vectors: "{1}" is not in every run; all runs need the same points: {2}</source>
        <translation>{0}.vectors: „{1}“ ist nicht in jedem Lauf; alle Läufe brauchen dieselben Messpunkte: {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.vectors."{1}"</source>
        <translation>{0}, Zeiger „{1}“</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>none: add a [[plane]]</source>
        <translation>keine: eine [[plane]] hinzufügen</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.masses: "{1}" is no plane of this file; there is {2}</source>
        <translation>{0}.masses: „{1}“ ist keine Ebene dieser Datei; es gibt {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.masses."{1}"</source>
        <translation>{0}, Massen „{1}“</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>run "{0}".kind: is a second slow roll; keep one</source>
        <translation>Lauf „{0}“: ist ein zweiter Langsamlauf; einen behalten</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>run "{0}".kind: a slow roll is taken off displacement points, but no [[point]] says which they are; add one for each point with its quantity, such as quantity = "displacement"</source>
        <translation>Lauf „{0}“: ein Langsamlauf wird an Messpunkten des Schwingwegs abgezogen, aber kein [[point]] sagt, welche das sind; je Messpunkt einen mit seiner Messgröße hinzufügen, etwa quantity = "displacement"</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.radius: plane "{1}" has none to compare with; give it one</source>
        <translation>{0}.radius: Ebene „{1}“ hat keinen zum Vergleich; einen angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.covariance.points: must name {1}</source>
        <translation>{0}.covariance.points: muss nennen: {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.covariance.matrix: must be {1} by {2}, re and im of each point</source>
        <translation>{0}.covariance.matrix: muss {1} mal {2} sein, Re und Im jedes Messpunkts</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.covariance.matrix: must be finite, no number above {1}</source>
        <translation>{0}.covariance.matrix: muss endlich sein, keine Zahl über {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.covariance.matrix: must be finite and symmetric</source>
        <translation>{0}.covariance.matrix: muss endlich und symmetrisch sein</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}.covariance.matrix: is no covariance: some variance in it is negative</source>
        <translation>{0}.covariance.matrix: ist keine Kovarianz: eine Varianz darin ist negativ</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_append.py"/>
        <source>{0}: vibration_unit is {1}, but this run is in {2}; use one for all runs</source>
        <translation>{0}: Schwingungseinheit ist {1}, dieser Lauf aber in {2}; eine für alle Läufe verwenden</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_append.py"/>
        <source>{0}: was measured with another hook-up than this run: their phases do not belong together; use a new runs file, or the recording's own hook-up if only a text in it changed</source>
        <translation>{0}: wurde mit anderem Anschluss gemessen als dieser Lauf: die Phasen gehören nicht zusammen; eine neue Laufdatei nehmen, oder den Anschluss der Aufnahme, wenn sich nur ein Text darin änderte</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_append.py"/>
        <source>{0}: cannot be added to: the result {1}</source>
        <translation>{0}: nicht ergänzbar: das Ergebnis {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_append.py"/>
        <source>{0}: vibration_unit</source>
        <translation>{0}: Schwingungseinheit</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>{0}: "{1}": is above 100 % or 90 deg, at which nothing can be told; "2 % 2 deg" is usual</source>
        <translation>{0}: „{1}“: ist über 100 % oder 90 Grad, womit nichts mehr zu sagen ist; üblich sind „2 % 2 deg“</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>limit "{0}".amplitude: {1} must be above 0</source>
        <translation>limit „{0}“.amplitude: {1} muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>repeatability {0} % and {1}° is assumed; repeat the initial run to learn it</source>
        <translation>Wiederholbarkeit {0} % und {1}° angenommen; den Urlauf wiederholen, dann wird sie bekannt</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>repeatability {0} % and {1}° is assumed: {2}; repeat the initial run to learn it</source>
        <translation>Wiederholbarkeit {0} % und {1}° angenommen: {2}; den Urlauf wiederholen, dann wird sie bekannt</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>repeatability {0} is assumed: the file does not say</source>
        <translation>Wiederholbarkeit {0} angenommen: die Datei sagt es nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>placement {0} is assumed: the file does not say</source>
        <translation>Platzierung {0} angenommen: die Datei sagt es nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>assumed_repeatability: "{0}": repeatability is stated as well; keep one of the two</source>
        <translation>assumed_repeatability: „{0}“: repeatability ist auch genannt; eines von beiden behalten</translation>
    </message>
    <message>
        <location filename="../../../solver/runs_file.py"/>
        <source>assumed_repeatability: "{0}": write why in one line of up to {1} letters, such as "5 % 5 deg: belt drive", or leave the colon out</source>
        <translation>assumed_repeatability: „{0}“: den Grund in eine Zeile von höchstens {1} Buchstaben schreiben, etwa „5 % 5 deg: belt drive“, oder den Doppelpunkt weglassen</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>{0}: coefficients: {1} entries are too many, at most {2}</source>
        <translation>{0}: coefficients: {1} Einträge sind zu viele, höchstens {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>{0}: coefficients {1}</source>
        <translation>{0}: coefficients {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>{0}.{1}: must be {2} by {3}, for its points and planes</source>
        <translation>{0}.{1}: muss {2} mal {3} sein, für seine Messpunkte und Ebenen</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>{0}: needs points, planes, and finite numbers</source>
        <translation>{0}: braucht Messpunkte, Ebenen und endliche Zahlen</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>{0}.covariance: must be symmetric</source>
        <translation>{0}.covariance: muss symmetrisch sein</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>{0}.covariance: is none: some variance in it is negative</source>
        <translation>{0}.covariance: ist keine: eine Varianz darin ist negativ</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>{0}.speed_rpm: {1}: must be above 0</source>
        <translation>{0}.speed_rpm: {1}: muss größer als 0 sein</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>{0}: has amplitudes only; coefficients without a phase are not worth storing</source>
        <translation>{0}: hat nur Amplituden; Koeffizienten ohne Phase lohnen das Speichern nicht</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>machine "{0}": nothing is stored for it; stored are {1}</source>
        <translation>Maschine „{0}“: nichts ist für sie gespeichert; gespeichert sind {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>machine "{0}": stored are points {1} and planes {2}, not those of {3}</source>
        <translation>Maschine „{0}“: gespeichert sind die Messpunkte {1} und Ebenen {2}, nicht die von {3}</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>machine "{0}": stored at {1} r/min, none of them within the speeds of {2}</source>
        <translation>Maschine „{0}“: gespeichert bei {1} r/min, nichts davon im Drehzahlbereich von {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>coefficients of {0} were measured with another hook-up, device or sample rate: phases may differ</source>
        <translation>die Koeffizienten von {0} wurden mit anderem Anschluss, Gerät oder anderer Abtastrate gemessen: Phasen können abweichen</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>machine "{0}", stored {1}</source>
        <translation>Maschine „{0}“, gespeichert {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>{0}: in {1}, but the runs are in {2}: use one quantity</source>
        <translation>{0}: in {1}, die Läufe aber in {2}: eine Messgröße verwenden</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>not tested yet</source>
        <translation>noch nicht geprüft</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>the stored coefficients are not tested yet: put on half the correction first, or a small trial mass</source>
        <translation>die gespeicherten Koeffizienten sind noch nicht geprüft: zuerst den halben Ausgleich oder eine kleine Testmasse anbringen</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>the runs agree with the stored coefficients, as far as the masses moved so far can tell</source>
        <translation>die Läufe passen zu den gespeicherten Koeffizienten, so weit die bisher bewegten Massen es zeigen</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>; half the correction first, because the hook-up is another one</source>
        <translation>; zuerst den halben Ausgleich, weil der Anschluss ein anderer ist</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>the runs agree with {0} times the stored coefficients turned by {1}°: pulse mark, sensor place, gain or lag changed; used so, and half the correction first</source>
        <translation>die Läufe passen zum {0}-Fachen der gespeicherten Koeffizienten, um {1}° verdreht: Marke, Sensorplatz, Verstärkung oder Nacheilung änderte sich; so verwendet, und zuerst der halbe Ausgleich</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>does not hold</source>
        <translation>gilt nicht mehr</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>the stored coefficients do not hold for this machine any more; they are left out: take new trial runs</source>
        <translation>die gespeicherten Koeffizienten gelten für diese Maschine nicht mehr; sie bleiben weg: neue Testläufe machen</translation>
    </message>
    <message>
        <location filename="../../../solver/stored.py"/>
        <source>{0}.machine: says nothing; name the machine</source>
        <translation>{0}.machine: sagt nichts; die Maschine benennen</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>general machinery</source>
        <translation>allgemeine Maschinen</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>crushing machine</source>
        <translation>Brecher</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>agricultural machine</source>
        <translation>Landmaschine</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>electric motor</source>
        <translation>Elektromotor</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>ISO 21940-11, balancing procedures and tolerances for rotors with rigid behaviour</source>
        <translation>ISO 21940-11, Verfahren und Toleranzen für Rotoren mit starrem Verhalten</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>2016, from memory</source>
        <translation>2016, aus dem Gedächtnis</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>machine-tool drive</source>
        <translation>Werkzeugmaschinenantrieb</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>grinding drive</source>
        <translation>Schleifantrieb</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>grinding-machine drive</source>
        <translation>Schleifmaschinenantrieb</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>precision spindle</source>
        <translation>Präzisionsspindel</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>fan BV-1</source>
        <translation>Ventilator BV-1</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>fan BV-2</source>
        <translation>Ventilator BV-2</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>fan BV-3</source>
        <translation>Ventilator BV-3</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>fan BV-4</source>
        <translation>Ventilator BV-4</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>fan BV-5</source>
        <translation>Ventilator BV-5</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>ISO 14694, from memory</source>
        <translation>ISO 14694, aus dem Gedächtnis</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>older balancing standards</source>
        <translation>ältere Auswuchtnormen</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/balance_grades.toml"/>
        <source>from memory, and memories differ: some have a static factor of 0.5; the stricter stands here</source>
        <translation>aus dem Gedächtnis, und Erinnerungen weichen ab: manche kennen den statischen Faktor 0.5; hier steht der strengere</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/journal_load.toml"/>
        <source>from memory</source>
        <translation>aus dem Gedächtnis</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/journal_load.toml"/>
        <source>API standards family</source>
        <translation>Normenfamilie der API</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_fans.toml"/>
        <source>ISO 14694, industrial fans</source>
        <translation>ISO 14694, Industrieventilatoren</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_fans.toml"/>
        <source>2003, from memory</source>
        <translation>2003, aus dem Gedächtnis</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_fans.toml"/>
        <source>below start-up</source>
        <translation>unter Inbetriebnahme</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_fans.toml"/>
        <source>start-up to alarm</source>
        <translation>Inbetriebnahme bis Alarm</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_fans.toml"/>
        <source>alarm to shutdown</source>
        <translation>Alarm bis Abschaltung</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_fans.toml"/>
        <source>above shutdown</source>
        <translation>über Abschaltung</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_fans.toml"/>
        <source>BV-2</source>
        <translation>BV-2</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_fans.toml"/>
        <source>BV-3</source>
        <translation>BV-3</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_fans.toml"/>
        <source>BV-4</source>
        <translation>BV-4</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_fans.toml"/>
        <source>BV-5</source>
        <translation>BV-5</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_machines.toml"/>
        <source>above 300 kW</source>
        <translation>über 300 kW</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_machines.toml"/>
        <source>15 to 300 kW</source>
        <translation>15 bis 300 kW</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_machines.toml"/>
        <source>ISO 20816-3, industrial machines above 15 kW</source>
        <translation>ISO 20816-3, Industriemaschinen über 15 kW</translation>
    </message>
    <message>
        <location filename="../../../solver/tables/vibration_machines.toml"/>
        <source>2022, from memory</source>
        <translation>2022, aus dem Gedächtnis</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>opposite the heavy spot</source>
        <translation>gegenüber der schweren Stelle</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>heavy spot unknown: any direction</source>
        <translation>schwere Stelle unbekannt: beliebige Richtung</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>usable with a trim</source>
        <translation>brauchbar, mit Nachwuchten</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>trial on "{0}": {1}, {2} standard deviations; rule of thumb for the trial's effect kept ({3} %, {4}°); {5} % of the vibration is to be expected after the correction</source>
        <translation>Test in „{0}“: {1}, {2} Standardabweichungen; Faustregel für die Wirkung des Tests eingehalten ({3} %, {4}°); nach dem Ausgleich sind {5} % der Schwingung zu erwarten</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>trial on "{0}": {1}, {2} standard deviations; rule of thumb for the trial's effect not kept ({3} %, {4}°); {5} % of the vibration is to be expected after the correction</source>
        <translation>Test in „{0}“: {1}, {2} Standardabweichungen; Faustregel für die Wirkung des Tests nicht eingehalten ({3} %, {4}°); nach dem Ausgleich sind {5} % der Schwingung zu erwarten</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>not kept</source>
        <translation>nicht eingehalten</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>, {0} % with {1} times the mass</source>
        <translation>, {0} % mit dem {1}-Fachen der Masse</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>; {0} % is not to be had with this repeatability: average more, or repeat runs</source>
        <translation>; {0} % sind bei dieser Wiederholbarkeit nicht zu erreichen: länger mitteln oder Läufe wiederholen</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>rotor mass</source>
        <translation>Rotormasse</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>{0} {1}: must be above {2} and below {3}</source>
        <translation>{0} {1}: muss größer als {2} und kleiner als {3} sein</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>force share {0}: give more than 0 and no more than {1} of the weight</source>
        <translation>Kraftanteil {0}: mehr als 0 und höchstens das {1}-Fache des Gewichts angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>within 20 % of the resonance at {0} r/min: half the mass, any direction; moving the speed or the support is better</source>
        <translation>innerhalb 20 % der Resonanz bei {0} r/min: die halbe Masse, beliebige Richtung; besser Drehzahl oder Abstützung verlegen</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>plane "{0}": the stored coefficients are 0: take any small trial mass</source>
        <translation>Ebene „{0}“: die gespeicherten Koeffizienten sind 0: eine beliebige kleine Testmasse nehmen</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>opposite the heavy spot, by stored coefficients</source>
        <translation>gegenüber der schweren Stelle, nach gespeicherten Koeffizienten</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>{0}; made less for the force limit of {1} N</source>
        <translation>{0}; verkleinert wegen der Kraftgrenze von {1} N</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>{0}; made less for the abort level of {1}</source>
        <translation>{0}; verkleinert wegen des Abschaltpegels von {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>plane "{0}": no trial mass stays below the abort level; agree another level or lower speed</source>
        <translation>Ebene „{0}“: keine Testmasse bleibt unter dem Abschaltpegel; einen anderen Pegel oder eine niedrigere Drehzahl vereinbaren</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>speed {0} r/min, radius {1} m: the trial mass would be heavier than the rotor; give the speed at which the machine runs, and the radius at which masses are fixed</source>
        <translation>Drehzahl {0} r/min, Radius {1} m: Die Probemasse wäre schwerer als der Rotor; die Drehzahl angeben, mit der die Maschine läuft, und den Radius, auf dem Massen befestigt werden</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>support: a natural frequency of {0} r/min must be above 0 and finite</source>
        <translation>Abstützung: eine Eigenfrequenz von {0} r/min muss größer als 0 und endlich sein</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>runs file, 1x, {0}</source>
        <translation>Laufdatei, 1x, {0}</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>accept "{0}": is no limit of {1}; there is {2}</source>
        <translation>accept „{0}“: ist kein Grenzwert von {1}; es gibt {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>support: "{0}" is no point of the runs file; there is {1}</source>
        <translation>Abstützung: „{0}“ ist kein Messpunkt der Laufdatei; es gibt {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>{0}: limits are in {1}; {2} in {3} cannot be compared with them</source>
        <translation>{0}: Grenzwerte sind in {1}; {2} in {3} ist damit nicht vergleichbar</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>accept "{0}": {1} gives none for class "{2}"</source>
        <translation>accept „{0}“: {1} nennt keinen für Klasse „{2}“</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>{0} ({1}), {2}{3}, {4}, broadband, {5}</source>
        <translation>{0} ({1}), {2}{3}, {4}, Summenpegel, {5}</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>{0} ({1}), {2}, {3}, broadband, {4}</source>
        <translation>{0} ({1}), {2}, {3}, Summenpegel, {4}</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>{0}; 1x alone</source>
        <translation>{0}; nur 1x</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>"{0}": 1x alone is in zone {1} of {2}; the broadband level is not known</source>
        <translation>„{0}“: 1x allein liegt in Zone {1} von {2}; der Summenpegel ist nicht bekannt</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>"{0}": the broadband level {1} is less than its once-per-rev part {2} {3}; one of the two is wrong</source>
        <translation>„{0}“: der Summenpegel {1} ist kleiner als sein Anteil der 1. Ordnung {2} {3}; einer der beiden ist falsch</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>{0}: no value for {1} of {2}</source>
        <translation>{0}: kein Wert für {1} von {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>class: {0} has several; say which of {1}</source>
        <translation>Klasse: {0} hat mehrere; angeben, welche von {1}</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>class "{0}": {1} has none such; there is {2}</source>
        <translation>Klasse „{0}“: hat {1} nicht; es gibt {2}</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>support: that of "{0}" is not said; give rigid, flexible, or the lowest natural frequency in its direction</source>
        <translation>Abstützung: die von „{0}“ ist nicht angegeben; rigid, flexible oder die niedrigste Eigenfrequenz in seiner Richtung angeben</translation>
    </message>
    <message>
        <location filename="../../../solver/vibration_limits.py"/>
        <source>support "{0}": class {1} is for {2}</source>
        <translation>Abstützung „{0}“: Klasse {1} gilt für {2}</translation>
    </message>
</context>
</TS>
