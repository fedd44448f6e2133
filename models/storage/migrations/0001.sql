-- The first tables: all records of a yard. Quantities are integers in base units, times are
-- seconds UTC, days are ISO dates. Append-only: never edit a migration that has shipped.

CREATE TABLE "yard" (
    id INTEGER PRIMARY KEY,
    "name" TEXT NOT NULL DEFAULT '' CHECK ("name" <> ''),
    "time_zone" TEXT NOT NULL DEFAULT '' CHECK ("time_zone" <> ''),
    "metric" INTEGER NOT NULL CHECK ("metric" IN (0, 1)),
    "invented" INTEGER NOT NULL CHECK ("invented" IN (0, 1)),
    "elevation" INTEGER CHECK ("elevation" >= -500000000 AND "elevation" <= 6000000000),
    "accepted_risk" INTEGER NOT NULL CHECK ("accepted_risk" >= 1000 AND "accepted_risk" <= 500000),
    "order_lead" INTEGER NOT NULL CHECK ("order_lead" >= 0 AND "order_lead" <= 31536000),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT '',
    CHECK (id = 1)
) STRICT;

CREATE TABLE "species" (
    id INTEGER PRIMARY KEY,
    "name" TEXT NOT NULL DEFAULT '' CHECK ("name" <> ''),
    "scientific" TEXT NOT NULL DEFAULT '',
    "basic_gravity" INTEGER NOT NULL CHECK ("basic_gravity" >= 200000 AND "basic_gravity" <= 1200000),
    "shrinkage" INTEGER CHECK ("shrinkage" >= 0 AND "shrinkage" <= 300000),
    "green" INTEGER CHECK ("green" >= 0 AND "green" <= 250000),
    "gross_heat" INTEGER CHECK ("gross_heat" >= 14000000 AND "gross_heat" <= 25000000),
    "ash" INTEGER CHECK ("ash" >= 0 AND "ash" <= 100000),
    "never_burn" INTEGER NOT NULL CHECK ("never_burn" IN (0, 1)),
    "never_burn_reason" TEXT NOT NULL DEFAULT '',
    "source" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "supplier" (
    id INTEGER PRIMARY KEY,
    "name" TEXT NOT NULL DEFAULT '' CHECK ("name" <> ''),
    "contact" TEXT NOT NULL DEFAULT '',
    "lead_time" INTEGER CHECK ("lead_time" >= 0 AND "lead_time" <= 31536000),
    "unit" TEXT NOT NULL CHECK ("unit" IN ('cord', 'face_cord', 'half_cord', 'quarter_cord', 'cubic_foot', 'pound')),
    "stick_length" INTEGER CHECK ("stick_length" >= 100000 AND "stick_length" <= 1300000),
    "price" INTEGER CHECK ("price" >= 0),
    "promised" INTEGER CHECK ("promised" >= 0 AND "promised" <= 250000),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "wood_order" (
    id INTEGER PRIMARY KEY,
    "supplier" INTEGER NOT NULL REFERENCES "supplier" (id) DEFERRABLE INITIALLY DEFERRED,
    "species" INTEGER NOT NULL REFERENCES "species" (id) DEFERRABLE INITIALLY DEFERRED,
    "state" TEXT NOT NULL CHECK ("state" IN ('draft', 'sent', 'promised', 'received', 'cancelled')),
    "volume" INTEGER NOT NULL CHECK ("volume" >= 1 AND "volume" <= 362455636),
    "price" INTEGER CHECK ("price" >= 0),
    "promised_moisture" INTEGER CHECK ("promised_moisture" >= 0 AND "promised_moisture" <= 250000),
    "ordered" TEXT CHECK ("ordered" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    "promised" TEXT CHECK ("promised" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    "received" TEXT CHECK ("received" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "lot" (
    id INTEGER PRIMARY KEY,
    "name" TEXT NOT NULL DEFAULT '' CHECK ("name" <> ''),
    "species" INTEGER NOT NULL REFERENCES "species" (id) DEFERRABLE INITIALLY DEFERRED,
    "supplier" INTEGER REFERENCES "supplier" (id) DEFERRABLE INITIALLY DEFERRED,
    "wood_order" INTEGER REFERENCES "wood_order" (id) DEFERRABLE INITIALLY DEFERRED,
    "received" INTEGER NOT NULL,
    "measured_by" TEXT NOT NULL CHECK ("measured_by" IN ('stack', 'loose', 'weighed', 'claimed')),
    "stack_length" INTEGER CHECK ("stack_length" >= 10000 AND "stack_length" <= 60000000),
    "stack_height" INTEGER CHECK ("stack_height" >= 10000 AND "stack_height" <= 6000000),
    "stack_depth" INTEGER CHECK ("stack_depth" >= 10000 AND "stack_depth" <= 6000000),
    "loose_volume" INTEGER CHECK ("loose_volume" >= 0),
    "weight" INTEGER CHECK ("weight" >= 1 AND "weight" <= 27215542200),
    "paid_for" INTEGER CHECK ("paid_for" >= 0 AND "paid_for" <= 362455636),
    "price" INTEGER CHECK ("price" >= 0),
    "promised_moisture" INTEGER CHECK ("promised_moisture" >= 0 AND "promised_moisture" <= 250000),
    "stick_length" INTEGER CHECK ("stick_length" >= 50000 AND "stick_length" <= 1300000),
    "split_thickness" INTEGER CHECK ("split_thickness" >= 10000 AND "split_thickness" <= 500000),
    "split_mass" INTEGER CHECK ("split_mass" >= 45359 AND "split_mass" <= 27215542),
    "splits_weighed" INTEGER NOT NULL CHECK ("splits_weighed" >= 0),
    "cover" TEXT NOT NULL CHECK ("cover" IN ('open', 'top', 'shed', 'kiln')),
    "place" TEXT NOT NULL DEFAULT '',
    "origin" TEXT NOT NULL DEFAULT '',
    "certificate" TEXT NOT NULL DEFAULT '',
    "hold" INTEGER NOT NULL CHECK ("hold" IN (0, 1)),
    "hold_reason" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "moisture_reading" (
    id INTEGER PRIMARY KEY,
    "lot" INTEGER NOT NULL REFERENCES "lot" (id) DEFERRABLE INITIALLY DEFERRED,
    "time" INTEGER NOT NULL,
    "basis" TEXT NOT NULL CHECK ("basis" IN ('dry', 'wet')),
    "pieces" TEXT NOT NULL CHECK ("pieces" <> ''),
    "face" TEXT NOT NULL CHECK ("face" IN ('fresh', 'old', 'end')),
    "wood_temperature" INTEGER CHECK ("wood_temperature" >= -40000 AND "wood_temperature" <= 80000),
    "scale" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "oven_test" (
    id INTEGER PRIMARY KEY,
    "lot" INTEGER NOT NULL REFERENCES "lot" (id) DEFERRABLE INITIALLY DEFERRED,
    "time" INTEGER NOT NULL,
    "wet" INTEGER NOT NULL CHECK ("wet" >= 1000 AND "wet" <= 20000000),
    "dry" INTEGER NOT NULL CHECK ("dry" >= 1000 AND "dry" <= 20000000),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT '',
    CHECK ("dry" <= "wet")
) STRICT;

CREATE TABLE "pit" (
    id INTEGER PRIMARY KEY,
    "name" TEXT NOT NULL DEFAULT '' CHECK ("name" <> ''),
    "diameter" INTEGER NOT NULL CHECK ("diameter" >= 200000 AND "diameter" <= 3000000),
    "length" INTEGER NOT NULL CHECK ("length" >= 300000 AND "length" <= 12000000),
    "firebox" INTEGER CHECK ("firebox" >= 150000 AND "firebox" <= 3000000),
    "plate" INTEGER CHECK ("plate" >= 500 AND "plate" <= 60000),
    "steel" INTEGER CHECK ("steel" >= 9071847 AND "steel" <= 9071847400),
    "insulation" TEXT NOT NULL CHECK ("insulation" IN ('bare', 'firebox', 'whole')),
    "shelter" TEXT NOT NULL CHECK ("shelter" IN ('open', 'half', 'sheltered')),
    "usual_temperature" INTEGER CHECK ("usual_temperature" >= 48889 AND "usual_temperature" <= 482222),
    "retired" INTEGER NOT NULL CHECK ("retired" IN (0, 1)),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "event" (
    id INTEGER PRIMARY KEY,
    "name" TEXT NOT NULL DEFAULT '' CHECK ("name" <> ''),
    "place" TEXT NOT NULL DEFAULT '',
    "start" INTEGER NOT NULL,
    "end" INTEGER NOT NULL,
    "state" TEXT NOT NULL CHECK ("state" IN ('proposed', 'booked', 'done', 'cancelled')),
    "covers" INTEGER CHECK ("covers" >= 0 AND "covers" <= 100000),
    "travel" INTEGER CHECK ("travel" >= 0 AND "travel" <= 259200),
    "towed" INTEGER NOT NULL CHECK ("towed" IN (0, 1)),
    "site_rules" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT '',
    CHECK ("end" > "start")
) STRICT;

CREATE TABLE "planned_cook" (
    id INTEGER PRIMARY KEY,
    "event" INTEGER REFERENCES "event" (id) DEFERRABLE INITIALLY DEFERRED,
    "pit" INTEGER NOT NULL REFERENCES "pit" (id) DEFERRABLE INITIALLY DEFERRED,
    "light" INTEGER NOT NULL,
    "length" INTEGER NOT NULL CHECK ("length" >= 1800 AND "length" <= 259200),
    "target" INTEGER CHECK ("target" >= 48889 AND "target" <= 482222),
    "foods" TEXT NOT NULL DEFAULT '',
    "food_mass" INTEGER CHECK ("food_mass" >= 0 AND "food_mass" <= 1814369480),
    "species" INTEGER REFERENCES "species" (id) DEFERRABLE INITIALLY DEFERRED,
    "cancelled" INTEGER NOT NULL CHECK ("cancelled" IN (0, 1)),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "cook" (
    id INTEGER PRIMARY KEY,
    "name" TEXT NOT NULL DEFAULT '',
    "pit" INTEGER NOT NULL REFERENCES "pit" (id) DEFERRABLE INITIALLY DEFERRED,
    "planned" INTEGER REFERENCES "planned_cook" (id) DEFERRABLE INITIALLY DEFERRED,
    "lit" INTEGER NOT NULL,
    "at_temperature" INTEGER,
    "food_on" INTEGER,
    "food_off" INTEGER,
    "fire_out" INTEGER,
    "target" INTEGER CHECK ("target" >= 48889 AND "target" <= 482222),
    "start" TEXT NOT NULL CHECK ("start" IN ('cold', 'warm')),
    "foods" TEXT NOT NULL DEFAULT '',
    "food_mass" INTEGER CHECK ("food_mass" >= 0 AND "food_mass" <= 1814369480),
    "measured_by" TEXT NOT NULL CHECK ("measured_by" IN ('tally', 'weighed', 'difference')),
    "crate_before" INTEGER CHECK ("crate_before" >= 0 AND "crate_before" <= 4535923700),
    "crate_after" INTEGER CHECK ("crate_after" >= 0 AND "crate_after" <= 4535923700),
    "outside" INTEGER CHECK ("outside" >= -60000 AND "outside" <= 60000),
    "wind" INTEGER CHECK ("wind" >= 0 AND "wind" <= 60000),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT '',
    CHECK ("at_temperature" >= "lit"),
    CHECK ("food_on" >= "lit"),
    CHECK ("food_off" >= "lit"),
    CHECK ("fire_out" >= "lit"),
    CHECK ("crate_after" <= "crate_before")
) STRICT;

CREATE TABLE "feed" (
    id INTEGER PRIMARY KEY,
    "cook" INTEGER NOT NULL REFERENCES "cook" (id) DEFERRABLE INITIALLY DEFERRED,
    "time" INTEGER NOT NULL,
    "lot" INTEGER NOT NULL REFERENCES "lot" (id) DEFERRABLE INITIALLY DEFERRED,
    "pieces" INTEGER NOT NULL CHECK ("pieces" >= 0 AND "pieces" <= 500),
    "weight" INTEGER CHECK ("weight" >= 1 AND "weight" <= 453592370),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "movement" (
    id INTEGER PRIMARY KEY,
    "lot" INTEGER NOT NULL REFERENCES "lot" (id) DEFERRABLE INITIALLY DEFERRED,
    "time" INTEGER NOT NULL,
    "kind" TEXT NOT NULL CHECK ("kind" IN ('received', 'burned', 'counted', 'given', 'sold', 'lost')),
    "dry_mass" INTEGER NOT NULL CHECK ("dry_mass" >= -27215542200 AND "dry_mass" <= 27215542200),
    "pieces" INTEGER CHECK ("pieces" >= 0),
    "as_is" INTEGER CHECK ("as_is" >= 0),
    "moisture" INTEGER CHECK ("moisture" >= 0 AND "moisture" <= 250000),
    "cook" INTEGER REFERENCES "cook" (id) DEFERRABLE INITIALLY DEFERRED,
    "feed" INTEGER REFERENCES "feed" (id) DEFERRABLE INITIALLY DEFERRED,
    "assumed" INTEGER NOT NULL CHECK ("assumed" IN (0, 1)),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT '',
    UNIQUE ("feed"),
    CHECK (CASE "kind" WHEN 'received' THEN "dry_mass" >= 0 WHEN 'counted' THEN 1 ELSE "dry_mass" <= 0 END)
) STRICT;

CREATE TABLE "cook_temperature" (
    id INTEGER PRIMARY KEY,
    "cook" INTEGER NOT NULL REFERENCES "cook" (id) DEFERRABLE INITIALLY DEFERRED,
    "time" INTEGER NOT NULL,
    "probe" TEXT NOT NULL DEFAULT '',
    "temperature" INTEGER NOT NULL CHECK ("temperature" >= -60000 AND "temperature" <= 482222),
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "cook_note" (
    id INTEGER PRIMARY KEY,
    "cook" INTEGER NOT NULL REFERENCES "cook" (id) DEFERRABLE INITIALLY DEFERRED,
    "time" INTEGER NOT NULL,
    "kind" TEXT NOT NULL CHECK ("kind" IN ('remark', 'door', 'wrapped', 'turned', 'rain', 'wind', 'grease', 'ash', 'hand_over')),
    "text" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "trace" (
    id INTEGER PRIMARY KEY,
    "cook" INTEGER NOT NULL REFERENCES "cook" (id) DEFERRABLE INITIALLY DEFERRED,
    "probe" TEXT NOT NULL DEFAULT '' CHECK ("probe" <> ''),
    "start" INTEGER NOT NULL,
    "points" INTEGER NOT NULL CHECK ("points" >= 0),
    "block" BLOB,
    "source" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "weather" (
    id INTEGER PRIMARY KEY,
    "place" TEXT NOT NULL DEFAULT '' CHECK ("place" <> ''),
    "time" INTEGER NOT NULL,
    "temperature" INTEGER CHECK ("temperature" >= -60000 AND "temperature" <= 60000),
    "dew_point" INTEGER CHECK ("dew_point" >= -80000 AND "dew_point" <= 40000),
    "humidity" INTEGER CHECK ("humidity" >= 0 AND "humidity" <= 1050000),
    "wind" INTEGER CHECK ("wind" >= 0 AND "wind" <= 120000),
    "gust" INTEGER CHECK ("gust" >= 0 AND "gust" <= 150000),
    "wind_from" INTEGER CHECK ("wind_from" >= 0 AND "wind_from" <= 360),
    "rain" INTEGER CHECK ("rain" >= 0 AND "rain" <= 500000),
    "pressure" INTEGER CHECK ("pressure" >= 50000 AND "pressure" <= 110000),
    "normal" INTEGER NOT NULL CHECK ("normal" IN (0, 1)),
    "source" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT '',
    UNIQUE ("place", "time", "normal")
) STRICT;

CREATE TABLE "upkeep_task" (
    id INTEGER PRIMARY KEY,
    "name" TEXT NOT NULL DEFAULT '' CHECK ("name" <> ''),
    "pit" INTEGER REFERENCES "pit" (id) DEFERRABLE INITIALLY DEFERRED,
    "target" TEXT NOT NULL DEFAULT '',
    "every_days" INTEGER CHECK ("every_days" >= 1 AND "every_days" <= 7300),
    "every_cooks" INTEGER CHECK ("every_cooks" >= 1 AND "every_cooks" <= 5000),
    "every_fire_hours" INTEGER CHECK ("every_fire_hours" >= 3600 AND "every_fire_hours" <= 360000000),
    "every_seasoned" INTEGER CHECK ("every_seasoned" >= 6788947 AND "every_seasoned" <= 6788947256401),
    "since" TEXT NOT NULL CHECK ("since" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    "interval_from" TEXT NOT NULL CHECK ("interval_from" IN ('common_practice', 'local_code', 'maker', 'own')),
    "work" INTEGER NOT NULL CHECK ("work" >= 60 AND "work" <= 1209600),
    "cold_before" INTEGER NOT NULL CHECK ("cold_before" >= 0 AND "cold_before" <= 1209600),
    "cure_after" INTEGER NOT NULL CHECK ("cure_after" >= 0 AND "cure_after" <= 2592000),
    "priority" INTEGER NOT NULL CHECK ("priority" >= 1 AND "priority" <= 9),
    "blocks_lighting" INTEGER NOT NULL CHECK ("blocks_lighting" IN (0, 1)),
    "blocks_towing" INTEGER NOT NULL CHECK ("blocks_towing" IN (0, 1)),
    "tools" TEXT NOT NULL DEFAULT '',
    "steps" TEXT NOT NULL DEFAULT '',
    "cautions" TEXT NOT NULL DEFAULT '',
    "retired" INTEGER NOT NULL CHECK ("retired" IN (0, 1)),
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "visit" (
    id INTEGER PRIMARY KEY,
    "task" INTEGER NOT NULL REFERENCES "upkeep_task" (id) DEFERRABLE INITIALLY DEFERRED,
    "state" TEXT NOT NULL CHECK ("state" IN ('placed', 'started', 'done', 'skipped')),
    "start" INTEGER NOT NULL,
    "end" INTEGER,
    "pinned" INTEGER NOT NULL CHECK ("pinned" IN (0, 1)),
    "who" TEXT NOT NULL DEFAULT '',
    "cost" INTEGER CHECK ("cost" >= 0),
    "found" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT '',
    CHECK ("end" >= "start")
) STRICT;

CREATE TABLE "finding" (
    id INTEGER PRIMARY KEY,
    "text" TEXT NOT NULL DEFAULT '' CHECK ("text" <> ''),
    "pit" INTEGER REFERENCES "pit" (id) DEFERRABLE INITIALLY DEFERRED,
    "cook" INTEGER REFERENCES "cook" (id) DEFERRABLE INITIALLY DEFERRED,
    "visit" INTEGER REFERENCES "visit" (id) DEFERRABLE INITIALLY DEFERRED,
    "opened" INTEGER NOT NULL,
    "state" TEXT NOT NULL CHECK ("state" IN ('open', 'watched', 'mended')),
    "mended_by" INTEGER REFERENCES "visit" (id) DEFERRABLE INITIALLY DEFERRED,
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "known_good" (
    id INTEGER PRIMARY KEY,
    "pit" INTEGER NOT NULL REFERENCES "pit" (id) DEFERRABLE INITIALLY DEFERRED,
    "from_day" TEXT NOT NULL CHECK ("from_day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    "to_day" TEXT CHECK ("to_day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    "reason" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT '',
    CHECK ("to_day" >= "from_day")
) STRICT;

CREATE TABLE "crew_time" (
    id INTEGER PRIMARY KEY,
    "weekday" TEXT NOT NULL CHECK ("weekday" IN ('mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun')),
    "start" INTEGER NOT NULL CHECK ("start" >= 0 AND "start" <= 86400),
    "length" INTEGER NOT NULL CHECK ("length" >= 600 AND "length" <= 86400),
    "people" INTEGER NOT NULL CHECK ("people" >= 1 AND "people" <= 20),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE "import_profile" (
    id INTEGER PRIMARY KEY,
    "name" TEXT NOT NULL DEFAULT '' CHECK ("name" <> ''),
    "kind" TEXT NOT NULL DEFAULT '' CHECK ("kind" <> ''),
    "mapping" TEXT NOT NULL DEFAULT '' CHECK ("mapping" <> ''),
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE INDEX "wood_order_supplier" ON "wood_order" ("supplier");
CREATE INDEX "wood_order_species" ON "wood_order" ("species");
CREATE INDEX "lot_species" ON "lot" ("species");
CREATE INDEX "lot_supplier" ON "lot" ("supplier");
CREATE INDEX "lot_wood_order" ON "lot" ("wood_order");
CREATE INDEX "moisture_reading_lot" ON "moisture_reading" ("lot");
CREATE INDEX "oven_test_lot" ON "oven_test" ("lot");
CREATE INDEX "planned_cook_event" ON "planned_cook" ("event");
CREATE INDEX "planned_cook_pit" ON "planned_cook" ("pit");
CREATE INDEX "planned_cook_species" ON "planned_cook" ("species");
CREATE INDEX "cook_pit" ON "cook" ("pit");
CREATE INDEX "cook_planned" ON "cook" ("planned");
CREATE INDEX "feed_cook" ON "feed" ("cook");
CREATE INDEX "feed_lot" ON "feed" ("lot");
CREATE INDEX "movement_lot" ON "movement" ("lot");
CREATE INDEX "movement_cook" ON "movement" ("cook");
CREATE INDEX "movement_feed" ON "movement" ("feed");
CREATE INDEX "cook_temperature_cook" ON "cook_temperature" ("cook");
CREATE INDEX "cook_note_cook" ON "cook_note" ("cook");
CREATE INDEX "trace_cook" ON "trace" ("cook");
CREATE INDEX "upkeep_task_pit" ON "upkeep_task" ("pit");
CREATE INDEX "visit_task" ON "visit" ("task");
CREATE INDEX "finding_pit" ON "finding" ("pit");
CREATE INDEX "finding_cook" ON "finding" ("cook");
CREATE INDEX "finding_visit" ON "finding" ("visit");
CREATE INDEX "finding_mended_by" ON "finding" ("mended_by");
CREATE INDEX "known_good_pit" ON "known_good" ("pit");
