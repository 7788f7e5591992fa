<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>stillshaft</name>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>within the scatter</source>
        <translation>innerhalb der Streuung</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>at the edge of the scatter</source>
        <translation>am Rand der Streuung</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>stands out of the scatter</source>
        <translation>ragt aus der Streuung heraus</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>margin {0} %</source>
        <translation>Abstand {0} %</translation>
    </message>
    <message>
        <location filename="../../../ui/job_checks.py"/>
        <source>no resonance was found</source>
        <translation>keine Resonanz gefunden</translation>
    </message>
    <message>
        <location filename="../../../ui/live.py"/>
        <source>measuring ended by a fault of the program ({0}); start the source again</source>
        <translation>Messung durch einen Programmfehler beendet ({0}); die Quelle neu starten</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>the job has no hook-up yet: set one before a run</source>
        <translation>der Auftrag hat noch keinen Anschluss: vor einem Lauf festlegen</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>{0}; the recording is kept, and no run was made of it</source>
        <translation>{0}; die Aufnahme bleibt, es wurde kein Lauf daraus</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>close: trial masses are still on ({0}); take them off, or record them as part of the correction</source>
        <translation>Abschließen: Testmassen sind noch dran ({0}); abnehmen oder als Teil des Ausgleichs protokollieren</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>close: there is no verdict to accept or refuse; record one first</source>
        <translation>Abschließen: kein Ergebnis zum Annehmen oder Ablehnen; erst eines protokollieren</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>verdict: the brief has neither goal, rotor mass nor limits; set goal.grade and rotor.mass, or limits</source>
        <translation>Ergebnis: die Aufgabe hat weder Ziel noch Rotormasse noch Grenzwerte; Gütestufe und Rotormasse oder Grenzwerte angeben</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>mark moved</source>
        <translation>Marke bewegt</translation>
    </message>
    <message>
        <location filename="../../../ui/session.py"/>
        <source>really placed</source>
        <translation>wirklich platziert</translation>
    </message>
</context>
</TS>
