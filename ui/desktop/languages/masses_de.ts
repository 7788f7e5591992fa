<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>stillshaft</name>
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
</context>
</TS>
