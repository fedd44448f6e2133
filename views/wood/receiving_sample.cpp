// The sample of a delivery: SampleGroup of receiving_groups.h.
#include "models/domain/quantities/units.h"
#include "models/domain/statistics/descriptive.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"
#include "views/wood/meter_fields.h"
#include "views/wood/piece_chips.h"
#include "views/wood/receiving_groups.h"
#include "views/wood/wood_words.h"

#include <QBoxLayout>

#include <vector>

namespace rickyard::views {

using domain::Dimension;
using domain::Mass;

namespace {

// What the record takes for a mean split; a single one outside of it is a slip of the hand.
constexpr double kLeastSplitPounds = 0.1;
constexpr double kMostSplitPounds = 60;
constexpr int kSplitsToWeigh = 10;

const domain::Unit &massUnit(const PieceChips &weights)
{
    return *domain::findUnit(Dimension::Mass, weights.field()->unit());
}

} // namespace

SampleGroup::SampleGroup(PageContext &context, FieldSet &fields, QWidget *parent)
    : Card(tr("A sample"), parent), m_context(context),
      m_columns(new QBoxLayout(QBoxLayout::LeftToRight)), m_weights(nullptr),
      m_weighed(new TextLabel(QString(), TextStyle::Body, Role::InkMuted)),
      m_meter(new MeterFields(context))
{
    m_columns->setSpacing(theme(this).space(5));
    m_columns->addWidget(buildWeights(fields), 2);
    m_columns->addWidget(m_meter, 3);
    body()->addLayout(m_columns);
    connect(m_weights, &PieceChips::changed, this, [this] {
        showWeights();
        Q_EMIT edited();
    });
    connect(m_weights, &PieceChips::escaped, this, &SampleGroup::escaped);
    connect(m_meter, &MeterFields::changed, this, &SampleGroup::edited);
    connect(m_meter, &MeterFields::escaped, this, &SampleGroup::escaped);
    showWeights();
}

QWidget *SampleGroup::buildWeights(FieldSet &fields)
{
    const bool metric = m_context.books().yard().metric;
    auto *side = new QWidget;
    auto *column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(2));
    const QStringList units =
        metric ? QStringList{QStringLiteral("kg"), QStringLiteral("g"), QStringLiteral("lb")}
               : QStringList{QStringLiteral("lb"), QStringLiteral("oz"), QStringLiteral("kg")};
    m_weights = new PieceChips(tr("Weight of the next split"), units);
    m_weights->row()->setHelp(tr("Weigh ten as they come to hand: a weight, Enter, the next."));
    m_weights->setReader([this](const QString &text) -> std::optional<double> {
        const domain::Unit &unit = massUnit(*m_weights);
        const auto parsed = domain::parseQuantity(text, Dimension::Mass, unit, woodLocale());
        return parsed ? std::optional(domain::toUnit(parsed->base, unit)) : std::nullopt;
    });
    m_weights->setJudge(
        [this](const QString &text, std::optional<double> value) { return judge(text, value); });
    column->addWidget(m_weights);
    m_weighed->setWordWrap(true);
    column->addWidget(m_weighed);
    column->addWidget(fields.add(QStringLiteral("split_thickness"), tr("Thickness of a split")));
    column->addStretch(1);
    return side;
}

void SampleGroup::start(domain::RecordId provisional)
{
    m_weights->clear();
    m_meter->start(provisional);
    showWeights();
}

void SampleGroup::setNarrow(bool narrow)
{
    m_columns->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

QString SampleGroup::judge(const QString &text, std::optional<double> value) const
{
    if (text.isEmpty())
        return tr("Type what the scale shows, such as 5.2.");
    const domain::Unit &unit = massUnit(*m_weights);
    const double least = domain::toUnit(domain::massFromPounds(kLeastSplitPounds).base(), unit);
    const double most = domain::toUnit(domain::massFromPounds(kMostSplitPounds).base(), unit);
    if (value && *value >= least && *value <= most)
        return {};
    return tr("“%1” is not the weight of a split. Expected %2 to %3 %4.")
        .arg(text, domain::formatNumber(least, 1, woodLocale()),
             domain::formatNumber(most, 0, woodLocale()), unit.symbol);
}

void SampleGroup::weighInto(domain::Lot &lot) const
{
    const domain::Unit &unit = massUnit(*m_weights);
    std::vector<double> milligrams;
    for (double value : m_weights->values())
        milligrams.push_back(static_cast<double>(domain::fromUnit(value, unit)));
    lot.splitsWeighed = static_cast<int>(milligrams.size());
    if (milligrams.empty())
        return;
    keepTyped(lot.typed, QStringLiteral("split_mass"), m_weights->asTyped());
    lot.splitMass = Mass::rounded(domain::statistics::mean(milligrams).value());
    const auto spread = domain::statistics::sampleSd(milligrams);
    if (spread.ok())
        lot.splitSpread = Mass::rounded(spread.value());
    lot.splitsWeighedAt = m_context.verbs.now();
}

QString SampleGroup::weightsText() const
{
    return m_weighed->text();
}

void SampleGroup::showWeights()
{
    const QVector<double> &values = m_weights->values();
    const std::vector<double> all(values.cbegin(), values.cend());
    const QString unit = m_weights->field()->unit();
    if (all.empty()) {
        m_weighed->setText(tr("Feeds are counted in splits: their mean weight turns a count into "
                              "pounds."));
        return;
    }
    const auto figure = [](double value) { return domain::formatNumber(value, 1, woodLocale()); };
    QString words = tr("%1 weighed, mean %2 %3")
                        .arg(all.size())
                        .arg(figure(domain::statistics::mean(all).value()), unit);
    const auto spread = domain::statistics::sampleSd(all);
    const auto interval = domain::statistics::meanInterval(all, 0.95);
    if (spread.ok() && interval.ok())
        words += tr(" ± %1 at 95 %, spread %2 %3 (standard deviation)")
                     .arg(figure(interval->upper - interval->centre), figure(spread.value()), unit);
    const int left = kSplitsToWeigh - static_cast<int>(all.size());
    words += left > 0 ? tr(". %1 more to go.").arg(left) : QStringLiteral(".");
    m_weighed->setText(words);
}

} // namespace rickyard::views
