#include "models/domain/fire/diagnosis_words.h"

#include <QCoreApplication>

#include <cmath>

namespace rickyard::domain {
namespace {

struct DiagnosisWords {
    Q_DECLARE_TR_FUNCTIONS(Diagnosis)
};

QString spoken(const char *text)
{
    return DiagnosisWords::tr(text);
}

// "+14 %", "−3 %", "0 %".
QString signedPercent(double percent, const QLocale &locale)
{
    const auto whole = qRound(percent);
    const QString digits = locale.toString(std::abs(whole));
    if (whole == 0)
        return digits + QStringLiteral(" %");
    return (whole > 0 ? QStringLiteral("+") : QStringLiteral("−")) + digits + QStringLiteral(" %");
}

QString cooksWords(int count)
{
    return count == 1 ? spoken("1 cook") : spoken("%1 cooks").arg(count);
}

QString bothSides(const CauseEvidence &e, const QString &touched, const QString &others,
                  const QLocale &locale)
{
    QString text =
        spoken("%1: %2 over %3")
            .arg(touched, signedPercent(100.0 * e.touchedMean, locale), cooksWords(e.touched));
    if (e.others > 0)
        text += spoken("; %1: %2 over %3")
                    .arg(others, signedPercent(100.0 * e.othersMean, locale), cooksWords(e.others));
    return text + QStringLiteral(".");
}

// A recorded number before and since, in its own unit.
QString recordedWords(CauseKind kind, double value, const Wording &wording)
{
    const QLocale locale = localeOf(wording);
    switch (kind) {
    case CauseKind::Preheat:
        return spoken("%1 min").arg(locale.toString(qRound(60.0 * value)));
    case CauseKind::DoorOpenings:
        return spoken("%1 an hour").arg(locale.toString(value, 'f', 1));
    case CauseKind::FeedGaps:
        return spoken("%1 times the usual gap").arg(locale.toString(value, 'f', 1));
    case CauseKind::Thermometer:
        return wording.metric ? spoken("%1 °C").arg(locale.toString(qRound(value)))
                              : spoken("%1 °F").arg(locale.toString(qRound(1.8 * value)));
    case CauseKind::Wood:
        return moistureWords(moistureFromDryFraction(value), wording);
    default:
        return {};
    }
}

const char *recordedName(CauseKind kind)
{
    switch (kind) {
    case CauseKind::Preheat:
        return QT_TRANSLATE_NOOP("Diagnosis", "Lighting to temperature");
    case CauseKind::DoorOpenings:
        return QT_TRANSLATE_NOOP("Diagnosis", "Door openings");
    case CauseKind::FeedGaps:
        return QT_TRANSLATE_NOOP("Diagnosis", "Longest wait between feeds");
    case CauseKind::Thermometer:
        return QT_TRANSLATE_NOOP("Diagnosis", "The probe above the dial");
    case CauseKind::Wood:
        return QT_TRANSLATE_NOOP("Diagnosis", "Moisture of the wood");
    default:
        return "";
    }
}

QString lotName(RecordId lot, const DiagnosisNames &names)
{
    const QString name = names.lots.value(lot);
    return name.isEmpty() ? spoken("lot %1").arg(lot) : name;
}

DiagnosisCheck check(const char *words, const char *caution = "")
{
    return {spoken(words), *caution ? spoken(caution) : QString()};
}

} // namespace

QString causeName(const Cause &cause, const DiagnosisNames &names)
{
    switch (cause.kind) {
    case CauseKind::ThisPit:
        return spoken("%1 itself").arg(names.pit);
    case CauseKind::ThisLot:
        return spoken("the wood of %1").arg(lotName(cause.lot, names));
    case CauseKind::WindShelter:
        return spoken("wind: %1 has lost shelter").arg(names.pit);
    case CauseKind::Preheat:
        return spoken("longer preheats");
    case CauseKind::DoorOpenings:
        return spoken("more door openings");
    case CauseKind::FeedGaps:
        return spoken("long waits between feeds");
    case CauseKind::Thermometer:
        return spoken("a dial that reads low");
    case CauseKind::Wood:
        return spoken("the wood or its weights, on every pit");
    case CauseKind::Chance:
        return spoken("chance");
    }
    return {};
}

QString evidenceWords(const Cause &cause, const DiagnosisNames &names, const Wording &wording)
{
    const QLocale locale = localeOf(wording);
    const CauseEvidence &e = cause.evidence;
    QString text;
    switch (cause.kind) {
    case CauseKind::ThisLot:
        text = bothSides(e, spoken("Cooks with at least half of %1").arg(lotName(cause.lot, names)),
                         spoken("without"), locale);
        break;
    case CauseKind::WindShelter:
        text = bothSides(e, spoken("%1 on its windier half of cooks").arg(names.pit),
                         spoken("on the calmer half"), locale);
        break;
    default:
        text = bothSides(e, names.pit, spoken("other pits"), locale);
    }
    if (e.before && e.since)
        text = spoken("%1: %2 before, %3 since. ")
                   .arg(spoken(recordedName(cause.kind)),
                        recordedWords(cause.kind, *e.before, wording),
                        recordedWords(cause.kind, *e.since, wording)) +
               text;
    return text;
}

QVector<DiagnosisCheck> checksOf(CauseKind kind)
{
    static const char *const cold =
        QT_TRANSLATE_NOOP("Diagnosis", "With the fire out and the steel cold.");
    switch (kind) {
    case CauseKind::ThisPit:
        return {check("Pull a paper strip at eight points round the shut door: where it slides "
                      "out, the gasket leaks.",
                      cold),
                check("Hold a torch inside at night and look for light along the seams and the "
                      "door.",
                      cold),
                check("Look at the depth of the ash against the grate, and that the intake is "
                      "free.",
                      "Treat ash as hot for days; a lidded metal can, outside."),
                check("Look up the stack for soot and flakes; turn the damper through.", cold),
                check("Tap the firebox floor and seams with a hammer and look for rust-through.",
                      "With the fire out and the steel cold. A floor under half its thickness: do "
                      "not light it.")};
    case CauseKind::ThisLot:
        return {check("Split ten pieces and read the fresh faces with the meter."),
                check("Weigh ten pieces: lighter wood than believed gives less heat a piece."),
                check("Measure the stack again: was it the cord that was paid for?"),
                check("Hold the lot back or mix it with dry wood; claim with the supplier.")};
    case CauseKind::WindShelter:
        return {check("Is it where it used to stand? What shelter is gone (a wall, a fence, the "
                      "trailer)?"),
                check("Turn the intake away from the wind, or put up a screen.",
                      "Nothing that burns near the pit, and air enough round it; the local fire "
                      "marshal decides on distances."),
                check("Does the stack stand below a roof edge or behind a wall? Move it or turn "
                      "it.",
                      cold)};
    case CauseKind::Preheat:
        return {check("Start with dry or kiln-dried wood and small splits on a coal bed."),
                check("Is the steel wet, or a damper partly shut, while it comes up?"),
                check("Put the meat on when the pit is there: look at the minutes of each cook.")};
    case CauseKind::DoorOpenings:
        return {check("Look less: one look for mopping, turning and the probe together."),
                check("Read the probe's wire from outside; shut the door fully each time.")};
    case CauseKind::FeedGaps:
        return {check("Look at the last six feeds: gaps and weights."),
                check("Feed smaller and sooner, splits sorted by size, three or four in the bed.")};
    case CauseKind::Thermometer:
        return {check("Ice water (32 °F, 0 °C) and boiling water for your height: does the dial "
                      "agree?",
                      "Boiling water and steam scald."),
                check("Hang a second probe at the grate beside the dial for one cook."),
                check("Set the dial, or replace it beyond 25 °F (14 °C).")};
    case CauseKind::Wood:
        return {check("Read ten fresh faces of every stack that is in use."),
                check("Check the scale with a known weight."),
                check("Look at the covers: did rain get into the stacks?"),
                check("Were feeds written down twice, or the wood of the last lots overstated?")};
    case CauseKind::Chance:
        return {check("Cook on: two or three more cooks will tell.")};
    }
    return {};
}

QString checksBasis()
{
    return spoken("common practice, no source");
}

QString experimentFor(const Cause &one, const Cause &other, const DiagnosisNames &names)
{
    const auto either = [&](CauseKind kind) { return one.kind == kind || other.kind == kind; };
    const auto lot = [&]() {
        return lotName(one.kind == CauseKind::ThisLot ? one.lot : other.lot, names);
    };
    if (either(CauseKind::Chance))
        return spoken("Cook on: two or three more cooks will tell.");
    if (one.kind == CauseKind::ThisLot && other.kind == CauseKind::ThisLot)
        return spoken("Burn one of the two lots alone for a cook.");
    if (either(CauseKind::ThisLot) && either(CauseKind::Wood))
        return spoken("Burn a cook without any of %1.").arg(lot());
    if (either(CauseKind::ThisLot))
        return spoken("Burn another lot on %1, or %2 on another pit.").arg(names.pit, lot());
    if (either(CauseKind::Wood))
        return spoken("Burn the same wood on another pit and weigh it.");
    if (either(CauseKind::WindShelter))
        return spoken("Put up a screen for a windy cook, or wait for a calm one: a leak burns more "
                      "in calm air too.");
    if (either(CauseKind::Thermometer))
        return spoken("Hang a second probe at the grate and steer by that for a cook.");
    if (either(CauseKind::Preheat))
        return spoken("Light it for one cook as it used to be lit.");
    if (either(CauseKind::DoorOpenings))
        return spoken("Keep the door shut for one cook as it used to be.");
    return spoken("Feed one cook as often as it used to be fed.");
}

QString diagnosisSentence(const Diagnosis &diagnosis, const DiagnosisNames &names,
                          const Wording &wording)
{
    if (diagnosis.empty())
        return spoken("No cook of %1 to judge since then.").arg(names.pit);
    const QLocale locale = localeOf(wording);
    const Cause &first = diagnosis.causes.first();
    const auto chances = [&](const Cause &cause) {
        return spoken("%1 in 100").arg(locale.toString(qRound(100.0 * cause.probability)));
    };
    QString text = spoken("Most likely %1 (%2)").arg(causeName(first, names), chances(first));
    if (first.kind != CauseKind::Chance)
        text += spoken(", about %1 (%2 to %3)")
                    .arg(signedPercent(first.percent, locale), signedPercent(first.lower, locale),
                         signedPercent(first.upper, locale));
    text += QStringLiteral(".");
    if (diagnosis.toldApart || diagnosis.causes.size() < 2)
        return text;
    const Cause &second = diagnosis.causes.at(1);
    return text +
           spoken(" It cannot be told from %1 (%2) yet. %3")
               .arg(causeName(second, names), chances(second), experimentFor(first, second, names));
}

QString notJudgedWords(const Diagnosis &diagnosis)
{
    QStringList names;
    for (const CauseKind kind : diagnosis.notJudged)
        names << spoken(recordedName(kind)).toLower();
    if (names.isEmpty())
        return {};
    return spoken("Not judged, because it was not written down: %1.")
        .arg(names.join(QStringLiteral(", ")));
}

} // namespace rickyard::domain
