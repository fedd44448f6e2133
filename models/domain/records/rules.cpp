#include "models/domain/records/rules.h"

#include "models/domain/quantities/units.h"
#include "models/domain/upkeep/contradictions.h"

#include <QDateTime>
#include <QTimeZone>

namespace rickyard::domain {

namespace {

QString say(const char *text)
{
    return QString::fromUtf8(text);
}

const Unit &shownUnit(const FieldSpec &field, UnitSystem system)
{
    const Unit *preferred =
        field.preferredUnit.isEmpty() ? nullptr : findUnit(field.dimension, field.preferredUnit);
    return preferred != nullptr ? *preferred : defaultUnit(field.dimension, system);
}

QString shown(const FieldSpec &field, qint64 base, UnitSystem system)
{
    if (field.kind != FieldKind::Quantity)
        return QString::number(base);
    const Unit &unit = shownUnit(field, system);
    // A limit such as 0.1 lb must not be said as "0 lb".
    const double size = std::abs(toUnit(base, unit));
    const int decimals = size > 0 && size < 1 ? 2 : unit.decimals;
    return formatQuantity(base, unit, QLocale(QStringLiteral("en_US")), decimals);
}

std::optional<QString> rangeProblem(const FieldSpec &field, qint64 base, UnitSystem system)
{
    const bool low = field.minimum && base < *field.minimum;
    const bool high = field.maximum && base > *field.maximum;
    if (!low && !high)
        return std::nullopt;
    const QString given = shown(field, base, system);
    if (field.minimum && field.maximum)
        return say("%1 is %2, but must lie between %3 and %4. Check the unit.")
            .arg(field.label, given, shown(field, *field.minimum, system),
                 shown(field, *field.maximum, system));
    if (low && *field.minimum <= 1)
        return say("%1 is %2, but cannot be %3.")
            .arg(field.label, given, *field.minimum == 0 ? say("below zero") : say("zero or less"));
    return say("%1 is %2, but must be %3 %4.")
        .arg(field.label, given, low ? say("at least") : say("at most"),
             shown(field, low ? *field.minimum : *field.maximum, system));
}

// Instants outside this range are slips of the keyboard or of a unit, not records of a yard.
bool plausibleTime(qint64 seconds)
{
    return seconds >= 631152000 && seconds < 4102444800; // 1990 to 2100
}

std::optional<QString> missingProblem(const FieldSpec &field, const Value &value)
{
    const QString *text = std::get_if<QString>(&value);
    const bool empty = isMissing(value) || (text != nullptr && text->trimmed().isEmpty()) ||
                       (field.kind == FieldKind::Reference && integerOr(value, 0) == 0);
    if (!empty || !field.required)
        return std::nullopt;
    return say("%1 is needed.").arg(field.label);
}

// A stack without size is a slip of the hand, not an empty stack.
std::optional<QString> stacksProblem(const FieldSpec &field, const Value &value, UnitSystem system)
{
    StackSizes stacks;
    fromValue(value, stacks);
    for (const StackSize &stack : stacks)
        for (const Length side : {stack.length, stack.height, stack.depth})
            if (const auto problem = rangeProblem(field, side.base(), system))
                return problem;
    return std::nullopt;
}

std::optional<QString> valueProblem(const Books &books, const FieldSpec &field, const Value &value)
{
    const UnitSystem system = books.yard().metric ? UnitSystem::Metric : UnitSystem::UsCustomary;
    switch (field.kind) {
    case FieldKind::Choice:
        for (const Choice &choice : field.choices)
            if (choice.key == textOf(value))
                return std::nullopt;
        return say("%1 has no choice \"%2\".").arg(field.label, textOf(value));
    case FieldKind::Date:
        if (!QDate::fromString(textOf(value), Qt::ISODate).isValid())
            return say("%1 is not a day: write it as 2026-11-30.").arg(field.label);
        return std::nullopt;
    case FieldKind::Reference:
        if (!contains(books, field.refersTo, integerOr(value, 0)))
            return say("%1 is not in the books any more. Choose another.").arg(field.label);
        return std::nullopt;
    case FieldKind::Time:
        if (!plausibleTime(integerOr(value, 0)))
            return say("%1 must lie between 1990 and 2100.").arg(field.label);
        return std::nullopt;
    case FieldKind::Flag:
        if (integerOr(value, 0) != 0 && integerOr(value, 0) != 1)
            return say("%1 must be yes or no.").arg(field.label);
        return std::nullopt;
    case FieldKind::Count:
    case FieldKind::Quantity:
        return rangeProblem(field, integerOr(value, 0), system);
    case FieldKind::Text:
        if (textOf(value).size() > 400)
            return say("%1 is too long: 400 characters at most.").arg(field.label);
        return std::nullopt;
    case FieldKind::Stacks:
        return stacksProblem(field, value, system);
    case FieldKind::LongText:
    case FieldKind::Pieces:
    case FieldKind::Blob:
    case FieldKind::Typed:
        return std::nullopt;
    }
    return std::nullopt;
}

QString clockTime(const Books &books, Instant t)
{
    return QDateTime::fromSecsSinceEpoch(t.seconds(), QTimeZone(books.yard().timeZone.toLatin1()))
        .toString(QStringLiteral("d MMM yyyy, HH:mm"));
}

void checkPieces(const Books &books, const MoistureReading &r, Problems &problems)
{
    const Lot lot = books.lots.value(r.lot);
    const Species species = books.species.value(lot.species);
    const Moisture most = maximumMoisture(species.basicGravity);
    for (Moisture piece : r.pieces) {
        if (piece < Moisture::ofBase(0))
            problems.append({say("pieces"), say("A moisture below zero is not possible.")});
        else if (piece > most)
            problems.append(
                {say("pieces"),
                 say("%1 is more water than %2 can hold (%3). Check the meter's basis.")
                     .arg(show(piece, UnitSystem::UsCustomary, QLocale::c()), species.name,
                          show(most, UnitSystem::UsCustomary, QLocale::c()))});
    }
    if (r.time < lot.received)
        problems.append(
            {say("time"), say("This lot came only on %1.").arg(clockTime(books, lot.received))});
}

void checkOrder(const Cook &c, Problems &problems)
{
    struct Step {
        const char *key;
        const char *name;
        std::optional<Instant> time;
    };
    const Step steps[] = {{"at_temperature", "At temperature", c.atTemperature},
                          {"food_on", "Food on", c.foodOn},
                          {"food_off", "Food off", c.foodOff},
                          {"fire_out", "Fire out", c.fireOut}};
    for (const Step &step : steps)
        if (step.time && *step.time < c.lit)
            problems.append(
                {say(step.key), say("%1 cannot be before the lighting.").arg(say(step.name))});
    if (c.foodOn && c.foodOff && *c.foodOff < *c.foodOn)
        problems.append({say("food_off"), say("Food off cannot be before food on.")});
    if (c.fireOut && *c.fireOut - c.lit > Duration::ofBase(14LL * 86400))
        problems.append({say("fire_out"), say("A cook of more than 14 days: check the times.")});
}

void checkCook(const Books &books, const Cook &c, Problems &problems)
{
    checkOrder(c, problems);
    if (c.crateBefore && c.crateAfter && *c.crateAfter > *c.crateBefore)
        problems.append(
            {say("crate_after"), say("The crate cannot weigh more after than before.")});
    for (const Cook &other : books.cooks) {
        if (other.id == c.id || other.pit != c.pit)
            continue;
        const bool otherEndsFirst = other.fireOut && *other.fireOut <= c.lit;
        const bool endsFirst = c.fireOut && *c.fireOut <= other.lit;
        if (otherEndsFirst || endsFirst)
            continue;
        problems.append(
            {say("lit"),
             say("%1 was already burning then: the cook lit %2 %3.")
                 .arg(books.pits.value(c.pit).name, clockTime(books, other.lit),
                      other.fireOut ? say("went out %1").arg(clockTime(books, *other.fireOut))
                                    : say("has not been finished"))});
        return;
    }
    for (const Feed &feed : books.feeds)
        if (feed.cook == c.id && c.id != 0 &&
            (feed.time < c.lit || (c.fireOut && feed.time > *c.fireOut))) {
            problems.append({feed.time < c.lit ? say("lit") : say("fire_out"),
                             say("A feed is logged at %1, outside these times.")
                                 .arg(clockTime(books, feed.time))});
            return;
        }
}

void checkFeed(const Books &books, const Feed &f, Problems &problems)
{
    const Cook cook = books.cooks.value(f.cook);
    const Lot lot = books.lots.value(f.lot);
    const Species species = books.species.value(lot.species);
    if (f.time < cook.lit)
        problems.append(
            {say("time"), say("The fire was lit only at %1.").arg(clockTime(books, cook.lit))});
    if (cook.fireOut && f.time > *cook.fireOut)
        problems.append(
            {say("time"), say("The fire was out at %1.").arg(clockTime(books, *cook.fireOut))});
    if (f.time < lot.received)
        problems.append({say("lot"), say("%1 came only on %2: nothing could be fed from it before.")
                                         .arg(lot.name, clockTime(books, lot.received))});
    if (species.neverBurn)
        problems.append({say("lot"), say("%1 is marked never to be burned for food: %2")
                                         .arg(species.name, species.neverBurnReason)});
    if (f.pieces == 0 && !f.weight)
        problems.append({say("pieces"), say("Give the splits or a weight.")});
}

void checkPromise(const Books &books, RecordId species, std::optional<Moisture> promised,
                  const QString &field, Problems &problems)
{
    if (promised && *promised > maximumMoisture(books.species.value(species).basicGravity))
        problems.append({field, say("That is more water than the wood can hold.")});
}

// Packaged wood under an eighth of a cord is sold by volume (NIST Handbook 130 section 2.4):
// without it a price for a bundle says nothing.
void checkBundle(SellUnit unit, std::optional<Volume> volume, bool priced, Problems &problems)
{
    if (unit == SellUnit::Bundle && priced && !volume)
        problems.append({say("bundle_volume"), say("Give the volume that the bundle's label "
                                                   "states, such as 0.75 ft³.")});
}

void checkLot(const Books &books, const Lot &lot, Problems &problems)
{
    checkPromise(books, lot.species, lot.promisedMoisture, say("promised_moisture"), problems);
    checkBundle(lot.paidUnit, lot.bundleVolume, lot.paidCount.has_value(), problems);
    if (lot.hold && lot.holdReason.trimmed().isEmpty())
        problems.append({say("hold_reason"), say("Say why it is on hold.")});
    for (const Feed &feed : books.feeds)
        if (feed.lot == lot.id && lot.id != 0 && feed.time < lot.received) {
            problems.append({say("received"), say("A feed from this lot is logged at %1, before it "
                                                  "came.")
                                                  .arg(clockTime(books, feed.time))});
            return;
        }
}

void checkMovement(const Movement &m, Problems &problems)
{
    if (m.kind == MovementKind::Received && m.dryMass < Mass())
        problems.append({say("dry_mass"), say("What was received cannot be below zero.")});
    // A cook trued up by its crate may have burned less than was tallied.
    const bool trueUp = m.kind == MovementKind::Burned && m.cook && !m.feed;
    const bool takes =
        m.kind != MovementKind::Received && m.kind != MovementKind::Counted && !trueUp;
    if (takes && m.dryMass > Mass())
        problems.append({say("dry_mass"), say("What leaves the yard is written below zero.")});
}

void checkWeather(const Weather &w, Problems &problems)
{
    if (!w.temperature && !w.dewPoint && !w.humidity && !w.wind && !w.rain && !w.pressure)
        problems.append({say("temperature"), say("Give at least one figure.")});
    // A thermometer and a dew-point cell differ a little; more than this is a mix-up.
    if (w.temperature && w.dewPoint && *w.dewPoint - *w.temperature > Temperature::ofBase(1500))
        problems.append({say("dew_point"), say("The dew point cannot be above the temperature.")});
}

void checkTask(const Books &books, const UpkeepTask &t, Problems &problems)
{
    if (!t.everyDays && !t.everyCooks && !t.everyFireHours && !t.everySeasoned && !t.everyAsh &&
        t.occasion == Occasion::None)
        problems.append({say("every_days"), say("Give at least one trigger: days, cooks, fire "
                                                "hours, seasoned pounds, ash or an occasion.")});
    if (t.snoozedUntil.isValid() && t.snoozeReason.trimmed().isEmpty())
        problems.append({say("snooze_reason"), say("Say why it is put off.")});
    // Putting off what blocks a fire is allowed, since the block stays: the upkeep page says so.
    for (const Problem &problem : taskContradictions(books, t))
        if (problem.field != QLatin1String("snoozed_until"))
            problems.append(problem);
}

} // namespace

Moisture maximumMoisture(Plain basicGravity)
{
    const double g = number(basicGravity);
    return g > 0 ? moistureFromDryFraction((1.54 - g) / (1.54 * g)) : Moisture();
}

Problems checkFields(const Books &books, const Row &row)
{
    Problems problems;
    const TableSpec &spec = specOf(row.table);
    for (int i = 0; i < spec.fields.size(); ++i) {
        const FieldSpec &field = spec.fields.at(i);
        const Value value = row.values.value(i);
        auto problem = missingProblem(field, value);
        if (!problem && !isMissing(value) &&
            !(field.kind == FieldKind::Text && textOf(value).isEmpty()))
            problem = valueProblem(books, field, value);
        if (problem)
            problems.append({field.key, *problem});
    }
    return problems;
}

Problems checkAgainstBooks(const Books &books, const Row &row)
{
    Problems problems;
    switch (row.table) {
    case TableId::Yard:
        if (!QTimeZone(fromRow<Yard>(row).timeZone.toLatin1()).isValid())
            problems.append({say("time_zone"), say("There is no such time zone. Write it as "
                                                   "America/Chicago.")});
        break;
    case TableId::MoistureReading:
        checkPieces(books, fromRow<MoistureReading>(row), problems);
        break;
    case TableId::OvenTest: {
        const auto test = fromRow<OvenTest>(row);
        if (test.dry > test.wet)
            problems.append({say("dry"), say("The dry piece cannot weigh more than the wet one.")});
        break;
    }
    case TableId::Cook:
        checkCook(books, fromRow<Cook>(row), problems);
        break;
    case TableId::Feed:
        checkFeed(books, fromRow<Feed>(row), problems);
        break;
    case TableId::Supplier: {
        const auto supplier = fromRow<Supplier>(row);
        checkBundle(supplier.unit, supplier.bundleVolume, supplier.price.has_value(), problems);
        break;
    }
    case TableId::Offer: {
        const auto offer = fromRow<Offer>(row);
        checkBundle(offer.unit, offer.bundleVolume, true, problems);
        checkPromise(books, offer.species, offer.promised, say("promised"), problems);
        break;
    }
    case TableId::Lot:
        checkLot(books, fromRow<Lot>(row), problems);
        break;
    case TableId::Movement:
        checkMovement(fromRow<Movement>(row), problems);
        break;
    case TableId::Weather:
        checkWeather(fromRow<Weather>(row), problems);
        break;
    case TableId::UpkeepTask:
        checkTask(books, fromRow<UpkeepTask>(row), problems);
        break;
    case TableId::Event: {
        const auto event = fromRow<Event>(row);
        if (event.end <= event.start)
            problems.append({say("end"), say("Serving must end after it starts.")});
        break;
    }
    case TableId::Visit: {
        const auto visit = fromRow<Visit>(row);
        if (visit.end && *visit.end < visit.start)
            problems.append({say("end"), say("A visit cannot end before it starts.")});
        if (visit.state == VisitState::Done && !visit.end)
            problems.append({say("end"), say("A visit that is done needs its end.")});
        break;
    }
    case TableId::KnownGood: {
        const auto period = fromRow<KnownGood>(row);
        if (period.to.isValid() && period.to < period.from)
            problems.append({say("to_day"), say("The period cannot end before it begins.")});
        break;
    }
    case TableId::CheckReading: {
        const auto reading = fromRow<CheckReading>(row);
        if (reading.point > books.tasks.value(reading.task).readingPoints)
            problems.append({say("point"), say("The task has fewer points than that.")});
        break;
    }
    case TableId::Photo: {
        const auto photo = fromRow<Photo>(row);
        if (!photo.visit && !photo.finding)
            problems.append({say("visit"), say("A photograph belongs to a visit or a finding.")});
        break;
    }
    case TableId::AshLoad: {
        const auto ash = fromRow<AshLoad>(row);
        if (ash.tipped && *ash.tipped < ash.takenOut)
            problems.append({say("tipped"), say("Ash cannot be tipped before it is taken out.")});
        break;
    }
    case TableId::BusyTime: {
        const auto busy = fromRow<BusyTime>(row);
        if (busy.end <= busy.start)
            problems.append({say("end"), say("It must end after it starts.")});
        break;
    }
    case TableId::CookTemperature: {
        const auto t = fromRow<CookTemperature>(row);
        if (t.time < books.cooks.value(t.cook).lit)
            problems.append({say("time"), say("The fire was lit only later.")});
        break;
    }
    default:
        break;
    }
    return problems;
}

} // namespace rickyard::domain
