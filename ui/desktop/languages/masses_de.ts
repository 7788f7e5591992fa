<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>stillshaft</name>
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
        <location filename="../../../solver/couple.py"/>
        <source>static part alone</source>
        <translation>statischer Anteil allein</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>couple alone</source>
        <translation>Moment allein</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>all planes</source>
        <translation>alle Ebenen</translation>
    </message>
    <message>
        <location filename="../../../solver/couple.py"/>
        <source>static part, then couple</source>
        <translation>statischer Anteil, dann Moment</translation>
    </message>
    <message>
        <location filename="../../../solver/influence.py"/>
        <source>its trial moved no point beyond the scatter; use a larger mass</source>
        <translation>ihr Test bewegte keinen Messpunkt über die Streuung hinaus; eine größere Masse nehmen</translation>
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
        <location filename="../../../solver/tables/journal_load.toml"/>
        <source>from memory</source>
        <translation>aus dem Gedächtnis</translation>
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
        <location filename="../../../solver/trial.py"/>
        <source>opposite the heavy spot</source>
        <translation>gegenüber der schweren Stelle</translation>
    </message>
    <message>
        <location filename="../../../solver/trial.py"/>
        <source>heavy spot unknown: any direction</source>
        <translation>schwere Stelle unbekannt: beliebige Richtung</translation>
    </message>
</context>
</TS>
