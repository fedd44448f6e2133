-- Wood in full: offers, several stacks a lot, what was paid for in its own unit, the spread of
-- weighed splits, reference pieces, and the corrections of the meter.

ALTER TABLE "yard" ADD COLUMN "correct_temperature" INTEGER NOT NULL DEFAULT 1 CHECK ("correct_temperature" IN (0, 1));
ALTER TABLE "yard" ADD COLUMN "correct_species" INTEGER NOT NULL DEFAULT 0 CHECK ("correct_species" IN (0, 1));
ALTER TABLE "yard" ADD COLUMN "meter_scale" TEXT NOT NULL DEFAULT '';

ALTER TABLE "supplier" ADD COLUMN "sells_by" TEXT NOT NULL DEFAULT 'cord' CHECK ("sells_by" IN ('cord', 'half_cord', 'quarter_cord', 'eighth_cord', 'face_cord', 'cubic_foot', 'loose_cubic_foot', 'pound', 'bundle'));
ALTER TABLE "supplier" ADD COLUMN "bundle_volume" INTEGER CHECK ("bundle_volume" >= 2832 AND "bundle_volume" <= 453070);
UPDATE "supplier" SET "sells_by" = "unit";
ALTER TABLE "supplier" DROP COLUMN "unit";

CREATE TABLE "offer" (
    id INTEGER PRIMARY KEY,
    "supplier" INTEGER NOT NULL REFERENCES "supplier" (id) DEFERRABLE INITIALLY DEFERRED,
    "species" INTEGER NOT NULL REFERENCES "species" (id) DEFERRABLE INITIALLY DEFERRED,
    "count" INTEGER NOT NULL CHECK ("count" >= 1000 AND "count" <= 100000000000),
    "sold_by" TEXT NOT NULL CHECK ("sold_by" IN ('cord', 'half_cord', 'quarter_cord', 'eighth_cord', 'face_cord', 'cubic_foot', 'loose_cubic_foot', 'pound', 'bundle')),
    "stick_length" INTEGER CHECK ("stick_length" >= 100000 AND "stick_length" <= 1300000),
    "bundle_volume" INTEGER CHECK ("bundle_volume" >= 2832 AND "bundle_volume" <= 453070),
    "promised" INTEGER CHECK ("promised" >= 0 AND "promised" <= 250000),
    "price" INTEGER NOT NULL CHECK ("price" >= 0 AND "price" <= 100000000),
    "delivery" INTEGER CHECK ("delivery" >= 0),
    "made" TEXT CHECK ("made" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    "closed" INTEGER NOT NULL CHECK ("closed" IN (0, 1)),
    "note" TEXT NOT NULL DEFAULT '',
    "typed" TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX "offer_supplier" ON "offer" ("supplier");
CREATE INDEX "offer_species" ON "offer" ("species");

ALTER TABLE "lot" ADD COLUMN "stacks" TEXT NOT NULL DEFAULT '';
ALTER TABLE "lot" ADD COLUMN "paid_count" INTEGER CHECK ("paid_count" >= 1000 AND "paid_count" <= 100000000000);
ALTER TABLE "lot" ADD COLUMN "paid_unit" TEXT NOT NULL DEFAULT 'cord' CHECK ("paid_unit" IN ('cord', 'half_cord', 'quarter_cord', 'eighth_cord', 'face_cord', 'cubic_foot', 'loose_cubic_foot', 'pound', 'bundle'));
ALTER TABLE "lot" ADD COLUMN "bundle_volume" INTEGER CHECK ("bundle_volume" >= 2832 AND "bundle_volume" <= 453070);
ALTER TABLE "lot" ADD COLUMN "split_spread" INTEGER CHECK ("split_spread" >= 0 AND "split_spread" <= 27215542);
ALTER TABLE "lot" ADD COLUMN "splits_weighed_at" INTEGER;
UPDATE "lot" SET "stacks" = "stack_length" || 'x' || "stack_height" || 'x' || "stack_depth"
    WHERE "stack_length" IS NOT NULL AND "stack_height" IS NOT NULL AND "stack_depth" IS NOT NULL;
UPDATE "lot" SET "paid_count" = CAST(round("paid_for" * 1000000.0 / 3624556.363776) AS INTEGER)
    WHERE "paid_for" >= 3625;
ALTER TABLE "lot" DROP COLUMN "stack_length";
ALTER TABLE "lot" DROP COLUMN "stack_height";
ALTER TABLE "lot" DROP COLUMN "stack_depth";
ALTER TABLE "lot" DROP COLUMN "paid_for";

ALTER TABLE "oven_test" ADD COLUMN "method" TEXT NOT NULL DEFAULT 'oven' CHECK ("method" IN ('oven', 'reference'));
ALTER TABLE "oven_test" ADD COLUMN "piece" TEXT NOT NULL DEFAULT '';
