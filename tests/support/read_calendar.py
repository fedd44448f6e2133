"""Reads an iCalendar file with python3-icalendar and prints what is in it as JSON, for
TstCalendarWrite: a second parser beside libical. Times are turned into UTC by the rules of the
file's own VTIMEZONE, not by the system's zones.

usage: read_calendar.py FILE [EPOCH SECOND ...]; for each second the offset of the file's zone.
"""
import datetime
import json
import sys

import icalendar


def moment(prop, zones):
    value = prop.dt
    if not isinstance(value, datetime.datetime):
        return value.isoformat()
    if prop.params.get("TZID"):
        value = zones[prop.params["TZID"]].localize(value.replace(tzinfo=None))
    if value.tzinfo is None:
        return value.strftime("%Y-%m-%dT%H:%M:%S floating")
    return value.astimezone(datetime.timezone.utc).strftime("%Y-%m-%dT%H:%M:%SZ")


def plain(component, zones):
    found = {"name": component.name}
    for key in ("UID", "SUMMARY", "DESCRIPTION", "LOCATION", "STATUS", "TRANSP", "PRIORITY",
                "ACTION"):
        if key in component:
            found[key.lower()] = str(component[key])
    for key in ("DTSTART", "DTEND", "DUE", "DTSTAMP"):
        if key in component:
            found[key.lower()] = moment(component[key], zones)
    if "TRIGGER" in component:
        trigger = component["TRIGGER"]
        found["trigger"] = int(trigger.dt.total_seconds())
        found["related"] = trigger.params.get("RELATED", "START")
    if "CATEGORIES" in component:
        lists = component["CATEGORIES"]
        lists = lists if isinstance(lists, list) else [lists]
        found["categories"] = [str(c) for one in lists for c in one.cats]
    found["parts"] = [plain(part, zones) for part in component.subcomponents]
    return found


def main():
    with open(sys.argv[1], "rb") as file:
        calendar = icalendar.Calendar.from_ical(file.read())
    zones = {str(z["TZID"]): z.to_tz() for z in calendar.walk("VTIMEZONE")}
    broken = [str(e) for part in calendar.walk() for e in part.errors]
    offsets = []
    for second in sys.argv[2:]:
        at = datetime.datetime.fromtimestamp(int(second), datetime.timezone.utc)
        offsets.append([int(at.astimezone(z).utcoffset().total_seconds()) for z in zones.values()])
    print(json.dumps({
        "prodid": str(calendar["PRODID"]),
        "version": str(calendar["VERSION"]),
        "zones": list(zones),
        "broken": broken,
        "offsets": offsets,
        "components": [plain(c, zones) for c in calendar.subcomponents if c.name != "VTIMEZONE"],
    }))


main()
