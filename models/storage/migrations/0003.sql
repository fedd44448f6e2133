-- What was changed on a cook after its fire was out; wood by difference of a stack; findings that
-- found nothing; how seldom the fuel watch may be wrong; a forecast typed in for a planned cook;
-- upkeep that is done once.

ALTER TABLE "yard" ADD COLUMN "false_alarm_cooks" INTEGER NOT NULL DEFAULT 200 CHECK ("false_alarm_cooks" >= 20 AND "false_alarm_cooks" <= 5000);

ALTER TABLE "planned_cook" ADD COLUMN "outside" INTEGER CHECK ("outside" >= -60000 AND "outside" <= 60000);
ALTER TABLE "planned_cook" ADD COLUMN "wind" INTEGER CHECK ("wind" >= 0 AND "wind" <= 60000);

ALTER TABLE "cook" ADD COLUMN "stack_before" INTEGER CHECK ("stack_before" >= 0 AND "stack_before" <= 36245564);
ALTER TABLE "cook" ADD COLUMN "stack_after" INTEGER CHECK ("stack_after" >= 0 AND "stack_after" <= 36245564);
ALTER TABLE "cook" ADD COLUMN "wood_lot" INTEGER REFERENCES "lot" (id) DEFERRABLE INITIALLY DEFERRED;
CREATE INDEX "cook_wood_lot" ON "cook" ("wood_lot");

ALTER TABLE "upkeep_task" ADD COLUMN "once" INTEGER NOT NULL DEFAULT 0 CHECK ("once" IN (0, 1));

CREATE TABLE "cook_change" (
    id INTEGER PRIMARY KEY,
    "cook" INTEGER NOT NULL REFERENCES "cook" (id) DEFERRABLE INITIALLY DEFERRED,
    "time" INTEGER NOT NULL,
    "what" TEXT NOT NULL DEFAULT '' CHECK ("what" <> ''),
    "before" TEXT NOT NULL DEFAULT '',
    "after" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX "cook_change_cook" ON "cook_change" ("cook");

CREATE TABLE "finding_new" (
    id INTEGER PRIMARY KEY,
    "text" TEXT NOT NULL DEFAULT '' CHECK ("text" <> ''),
    "pit" INTEGER REFERENCES "pit" (id) DEFERRABLE INITIALLY DEFERRED,
    "cook" INTEGER REFERENCES "cook" (id) DEFERRABLE INITIALLY DEFERRED,
    "visit" INTEGER REFERENCES "visit" (id) DEFERRABLE INITIALLY DEFERRED,
    "opened" INTEGER NOT NULL,
    "state" TEXT NOT NULL CHECK ("state" IN ('open', 'watched', 'mended', 'nothing')),
    "mended_by" INTEGER REFERENCES "visit" (id) DEFERRABLE INITIALLY DEFERRED,
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;
INSERT INTO "finding_new" (id, "text", "pit", "cook", "visit", "opened", "state", "mended_by", "typed")
    SELECT id, "text", "pit", "cook", "visit", "opened", "state", "mended_by", "typed" FROM "finding";
DROP TABLE "finding";
ALTER TABLE "finding_new" RENAME TO "finding";
CREATE INDEX "finding_pit" ON "finding" ("pit");
CREATE INDEX "finding_cook" ON "finding" ("cook");
CREATE INDEX "finding_visit" ON "finding" ("visit");
CREATE INDEX "finding_mended_by" ON "finding" ("mended_by");
