-- The yard's mark, which names its records to other programs. Ordering: room, loads and units of
-- an order, wood kept for an event, repeated events. Going out: boxes, kindling, the trailer. Upkeep:
-- occasions, ash, snoozing, needs of the work, readings, photographs, ash loads, exceptions. Busy
-- times of other calendars.

ALTER TABLE "yard" ADD COLUMN "wood_room" INTEGER CHECK ("wood_room" >= 28317 AND "wood_room" <= 362455636);
ALTER TABLE "yard" ADD COLUMN "season_month" INTEGER CHECK ("season_month" >= 1 AND "season_month" <= 12);
ALTER TABLE "yard" ADD COLUMN "box_mass" INTEGER CHECK ("box_mass" >= 453592 AND "box_mass" <= 907184740);
ALTER TABLE "yard" ADD COLUMN "kindling" INTEGER CHECK ("kindling" >= 0 AND "kindling" <= 90718474);
ALTER TABLE "yard" ADD COLUMN "trailer_empty" INTEGER CHECK ("trailer_empty" >= 0 AND "trailer_empty" <= 27215542200);
ALTER TABLE "yard" ADD COLUMN "trailer_limit" INTEGER CHECK ("trailer_limit" >= 45359237 AND "trailer_limit" <= 27215542200);
ALTER TABLE "yard" ADD COLUMN "mark" TEXT NOT NULL DEFAULT '';
UPDATE "yard" SET "mark" = lower(hex(randomblob(16)));

ALTER TABLE "supplier" ADD COLUMN "delivery" INTEGER CHECK ("delivery" >= 0);
ALTER TABLE "supplier" ADD COLUMN "most_units" INTEGER CHECK ("most_units" >= 1 AND "most_units" <= 10000);
ALTER TABLE "wood_order" ADD COLUMN "count" INTEGER CHECK ("count" >= 1000 AND "count" <= 100000000000);
ALTER TABLE "wood_order" ADD COLUMN "sold_by" TEXT NOT NULL DEFAULT 'cord' CHECK ("sold_by" IN ('cord', 'half_cord', 'quarter_cord', 'eighth_cord', 'face_cord', 'cubic_foot', 'loose_cubic_foot', 'pound', 'bundle'));
ALTER TABLE "wood_order" ADD COLUMN "chased" TEXT CHECK ("chased" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]');
ALTER TABLE "lot" ADD COLUMN "reserved_for" INTEGER REFERENCES "event" (id) DEFERRABLE INITIALLY DEFERRED;
CREATE INDEX "lot_reserved_for" ON "lot" ("reserved_for");
ALTER TABLE "event" ADD COLUMN "repeat_rule" TEXT NOT NULL DEFAULT '';
ALTER TABLE "event" ADD COLUMN "series" TEXT NOT NULL DEFAULT '';

ALTER TABLE "upkeep_task" ADD COLUMN "every_ash" INTEGER CHECK ("every_ash" >= 45359 AND "every_ash" <= 4535923700);
ALTER TABLE "upkeep_task" ADD COLUMN "occasion" TEXT NOT NULL DEFAULT 'none' CHECK ("occasion" IN ('none', 'before_cook', 'after_cook', 'before_towing', 'before_season'));
ALTER TABLE "upkeep_task" ADD COLUMN "snoozed_until" TEXT CHECK ("snoozed_until" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]');
ALTER TABLE "upkeep_task" ADD COLUMN "snooze_reason" TEXT NOT NULL DEFAULT '';
ALTER TABLE "upkeep_task" ADD COLUMN "people" INTEGER NOT NULL DEFAULT 1 CHECK ("people" >= 1 AND "people" <= 20);
ALTER TABLE "upkeep_task" ADD COLUMN "after" INTEGER REFERENCES "upkeep_task" (id) DEFERRABLE INITIALLY DEFERRED;
CREATE INDEX "upkeep_task_after" ON "upkeep_task" ("after");
ALTER TABLE "upkeep_task" ADD COLUMN "daylight" INTEGER NOT NULL DEFAULT 0 CHECK ("daylight" IN (0, 1));
ALTER TABLE "upkeep_task" ADD COLUMN "dry_weather" INTEGER NOT NULL DEFAULT 0 CHECK ("dry_weather" IN (0, 1));
ALTER TABLE "upkeep_task" ADD COLUMN "reading" TEXT NOT NULL DEFAULT 'none' CHECK ("reading" IN ('none', 'ice_point', 'boiling_point', 'paper_test', 'plate_thickness', 'other'));
ALTER TABLE "upkeep_task" ADD COLUMN "reading_unit" TEXT NOT NULL DEFAULT '';
ALTER TABLE "upkeep_task" ADD COLUMN "reading_points" INTEGER NOT NULL DEFAULT 1 CHECK ("reading_points" >= 1 AND "reading_points" <= 64);
ALTER TABLE "upkeep_task" ADD COLUMN "reading_low" INTEGER;
ALTER TABLE "upkeep_task" ADD COLUMN "reading_high" INTEGER;
ALTER TABLE "visit" ADD COLUMN "steps_done" TEXT NOT NULL DEFAULT '';

CREATE TABLE "check_reading" (
    id INTEGER PRIMARY KEY,
    "task" INTEGER NOT NULL REFERENCES "upkeep_task" (id) DEFERRABLE INITIALLY DEFERRED,
    "visit" INTEGER REFERENCES "visit" (id) DEFERRABLE INITIALLY DEFERRED,
    "time" INTEGER NOT NULL,
    "point" INTEGER NOT NULL CHECK ("point" >= 1 AND "point" <= 64),
    "value" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX "check_reading_task" ON "check_reading" ("task");
CREATE INDEX "check_reading_visit" ON "check_reading" ("visit");

CREATE TABLE "photo" (
    id INTEGER PRIMARY KEY,
    "visit" INTEGER REFERENCES "visit" (id) DEFERRABLE INITIALLY DEFERRED,
    "finding" INTEGER REFERENCES "finding" (id) DEFERRABLE INITIALLY DEFERRED,
    "caption" TEXT NOT NULL DEFAULT '',
    "file" TEXT NOT NULL DEFAULT '' CHECK ("file" <> ''),
    "sha256" TEXT NOT NULL DEFAULT '' CHECK ("sha256" <> ''),
    "bytes" INTEGER NOT NULL CHECK ("bytes" >= 0),
    "taken" INTEGER NOT NULL,
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX "photo_visit" ON "photo" ("visit");
CREATE INDEX "photo_finding" ON "photo" ("finding");

CREATE TABLE "ash_load" (
    id INTEGER PRIMARY KEY,
    "pit" INTEGER NOT NULL REFERENCES "pit" (id) DEFERRABLE INITIALLY DEFERRED,
    "taken_out" INTEGER NOT NULL,
    "can" TEXT NOT NULL DEFAULT '' CHECK ("can" <> ''),
    "mass" INTEGER CHECK ("mass" >= 0 AND "mass" <= 907184740),
    "tipped" INTEGER,
    "tipped_where" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT '',
    CHECK ("tipped" >= "taken_out")
) STRICT;
CREATE INDEX "ash_load_pit" ON "ash_load" ("pit");

CREATE TABLE "override" (
    id INTEGER PRIMARY KEY,
    "task" INTEGER NOT NULL REFERENCES "upkeep_task" (id) DEFERRABLE INITIALLY DEFERRED,
    "planned_cook" INTEGER REFERENCES "planned_cook" (id) DEFERRABLE INITIALLY DEFERRED,
    "event" INTEGER REFERENCES "event" (id) DEFERRABLE INITIALLY DEFERRED,
    "time" INTEGER NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '' CHECK ("reason" <> ''),
    "who" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX "override_task" ON "override" ("task");
CREATE INDEX "override_planned_cook" ON "override" ("planned_cook");
CREATE INDEX "override_event" ON "override" ("event");

CREATE TABLE "busy_time" (
    id INTEGER PRIMARY KEY,
    "summary" TEXT NOT NULL DEFAULT '',
    "start" INTEGER NOT NULL,
    "end" INTEGER NOT NULL,
    "source" TEXT NOT NULL DEFAULT '' CHECK ("source" <> ''),
    "uid" TEXT NOT NULL DEFAULT '' CHECK ("uid" <> ''),
    "typed" TEXT NOT NULL DEFAULT '',
    CHECK ("end" > "start")
) STRICT;
CREATE INDEX "busy_time_source" ON "busy_time" ("source");
