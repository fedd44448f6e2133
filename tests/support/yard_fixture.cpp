#include "tests/support/yard_fixture.h"

#include <QDateTime>
#include <QSignalSpy>
#include <QtTest/QTest>

namespace rickyard::test {

using namespace rickyard::domain;

namespace {

constexpr qint64 kDay = 86400;

template <class R>
RecordId must(commands::Verbs &verbs, const R &record)
{
    const auto added = verbs.add(record);
    if (!added)
        qFatal("fixture: %s", qPrintable(added.message()));
    return added.value();
}

} // namespace

YardFixture::YardFixture(bool filled)
{
    auto opened_ = workspace::Workspace::open(folder.filePath(QStringLiteral("yard.rickyard")),
                                              QDateTime::currentDateTimeUtc());
    if (!opened_)
        qFatal("fixture: %s", qPrintable(opened_.message()));
    workspace = std::move(opened_.value());
    verbs = std::make_unique<commands::Verbs>(*workspace, [this] { return now; });
    Yard yard = workspace->books().yard();
    yard.name = QStringLiteral("Test yard (invented)");
    yard.timeZone = QStringLiteral("America/Chicago");
    yard.invented = true;
    if (!verbs->edit(yard))
        qFatal("fixture: yard");
    if (filled)
        fill();
    answers = std::make_unique<workspace::AnswersService>(*workspace, [this] { return now; });
    settings = std::make_unique<QSettings>(folder.filePath(QStringLiteral("settings.ini")),
                                           QSettings::IniFormat);
    context.reset(new views::PageContext{
        *verbs, *answers, *settings, [this](Link link) { opened.append(link); },
        [this](const QString &text) { said << text; },
        [this](const Problems &problems) { refused << joined(problems); }});
}

YardFixture::~YardFixture() = default;

void YardFixture::waitForAnswers()
{
    if (answers->current())
        return;
    QSignalSpy spy(answers.get(), &workspace::AnswersService::updated);
    while (!answers->current() && spy.wait(120000)) {
    }
}

void YardFixture::fill()
{
    fillWood();
    fillFire();
    fillPlan();
}

void YardFixture::fillWood()
{
    Species o;
    o.name = QStringLiteral("Post oak");
    o.basicGravity = Plain::ofBase(600000);
    o.shrinkage = Ratio::ofBase(162000);
    o.green = Moisture::ofBase(70900);
    oak = must(*verbs, o);
    Species h = o;
    h.name = QStringLiteral("Hickory");
    h.basicGravity = Plain::ofBase(640000);
    hickory = must(*verbs, h);
    Supplier s;
    s.name = QStringLiteral("Dry Creek Wood (invented)");
    s.leadTime = Duration::ofBase(10 * kDay);
    s.unit = SellUnit::HalfCord;
    s.price = Money::ofBase(22000);
    s.promised = Moisture::ofBase(20000);
    supplier = must(*verbs, s);
    Lot lot;
    lot.name = QStringLiteral("Oak, spring");
    lot.species = oak;
    lot.supplier = supplier;
    lot.received = now - Duration::ofBase(200 * kDay);
    lot.measuredBy = Measure::Stack;
    lot.stacks = {
        {Length::ofBase(8 * 304800), Length::ofBase(4 * 304800), Length::ofBase(2 * 304800)}};
    lot.paidCount = Plain::ofBase(500000);
    lot.price = Money::ofBase(22000);
    lot.splitMass = massFromPounds(5);
    lot.splitsWeighed = 10;
    lot.promisedMoisture = Moisture::ofBase(20000);
    dryLot = must(*verbs, lot);
    lot.name = QStringLiteral("Hickory, autumn");
    lot.species = hickory;
    lot.received = now - Duration::ofBase(30 * kDay);
    wetLot = must(*verbs, lot);
    MoistureReading r;
    r.lot = dryLot;
    r.time = now - Duration::ofBase(100 * kDay);
    r.pieces = {Moisture::ofBase(17000), Moisture::ofBase(18500), Moisture::ofBase(19000)};
    must(*verbs, r);
    r.lot = wetLot;
    r.time = now - Duration::ofBase(20 * kDay);
    r.pieces = {Moisture::ofBase(31000), Moisture::ofBase(33500), Moisture::ofBase(30000)};
    must(*verbs, r);
}

void YardFixture::fillFire()
{
    Pit p;
    p.name = QStringLiteral("Big pit");
    p.diameter = Length::ofBase(940000);
    p.length = Length::ofBase(3000000);
    p.fireboxSide = Length::ofBase(800000);
    p.steel = massFromPounds(1800);
    p.usualTemperature = temperatureFromFahrenheit(250);
    bigPit = must(*verbs, p);
    p.name = QStringLiteral("Small pit");
    p.diameter = Length::ofBase(510000);
    p.length = Length::ofBase(1200000);
    p.fireboxSide = Length::ofBase(500000);
    p.steel = massFromPounds(350);
    smallPit = must(*verbs, p);
    // Ten cooks on the small pit at a steady rate, the last three 30 % above it.
    for (int i = 0; i < 10; ++i) {
        Cook c;
        c.name = QStringLiteral("Cook %1").arg(i + 1);
        c.pit = smallPit;
        c.lit = now - Duration::ofBase((90 - 8 * i) * kDay);
        const double length = 8.0 + (i % 4);
        c.atTemperature = c.lit + durationFromHours(1);
        c.fireOut = c.lit + durationFromHours(length);
        c.target = temperatureFromFahrenheit(250);
        c.outside = temperatureFromFahrenheit(60 - 2 * i);
        c.wind = Speed::ofBase(3000);
        const RecordId cook = must(*verbs, c);
        cooks << cook;
        const double factor = (i >= 7 ? 1.3 : 1.0) * (1.0 + 0.02 * ((i * 7) % 5 - 2));
        for (int hour = 0; hour < static_cast<int>(length); ++hour) {
            Feed f;
            f.cook = cook;
            f.lot = dryLot;
            f.time = c.lit + durationFromHours(hour + 0.1);
            f.pieces = 1;
            f.weight = massFromPounds(5.5 * factor);
            must(*verbs, f);
        }
    }
}

void YardFixture::fillPlan()
{
    Event e;
    e.name = QStringLiteral("Mill Field Supper (invented)");
    e.place = QStringLiteral("Mill Field (invented)");
    e.start = now + Duration::ofBase(10 * kDay);
    e.end = e.start + durationFromHours(5);
    e.covers = 120;
    event = must(*verbs, e);
    PlannedCook c;
    c.event = event;
    c.pit = smallPit;
    c.light = e.start - durationFromHours(14);
    c.length = durationFromHours(14);
    c.target = temperatureFromFahrenheit(250);
    plannedCook = must(*verbs, c);
    UpkeepTask t;
    t.name = QStringLiteral("Clean the grease drain");
    t.pit = smallPit;
    t.everyCooks = 5;
    t.since = QDate(2026, 8, 1);
    t.work = Duration::ofBase(1800);
    t.coldBefore = durationFromHours(8);
    t.blocksLighting = true;
    task = must(*verbs, t);
    CrewTime crew;
    crew.weekday = Weekday::Tuesday;
    crew.start = durationFromHours(18);
    crew.length = durationFromHours(3);
    must(*verbs, crew);
}

} // namespace rickyard::test
