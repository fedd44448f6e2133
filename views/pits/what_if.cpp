#include "views/pits/what_if.h"

#include "models/domain/answers/answers.h"
#include "models/domain/fire/use_words.h"
#include "models/domain/quantities/units.h"
#include "views/charts/share_bar.h"
#include "views/fire/fire_words.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/numeral.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QGridLayout>
#include <QSlider>

#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

// What a crew may ask for: from, to, and one step, in the unit shown.
struct Reach {
    int from;
    int to;
    int step;
};

Reach reachOf(FireWhatIf::Lever lever, bool metric)
{
    switch (lever) {
    case FireWhatIf::Hours:
        return {2, 30, 1};
    case FireWhatIf::PitHeat:
        return metric ? Reach{90, 200, 5} : Reach{200, 400, 5};
    case FireWhatIf::Outside:
        return metric ? Reach{-25, 45, 1} : Reach{-15, 110, 1};
    case FireWhatIf::Wind:
        return metric ? Reach{0, 20, 1} : Reach{0, 40, 1};
    case FireWhatIf::Moisture:
        return {8, 45, 1};
    case FireWhatIf::Food:
    case FireWhatIf::LeverCount:
        break;
    }
    return metric ? Reach{0, 300, 5} : Reach{0, 600, 10};
}

} // namespace

FireWhatIf::FireWhatIf(QWidget *parent)
    : QWidget(parent), m_pits(new QComboBox(this)), m_amount(new Numeral(this)),
      m_likely(new TextLabel(QString(), TextStyle::Heading, Role::Ink, this)),
      m_words(new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this)),
      m_parts(new ShareBar(tr("Where the heat goes"), this))
{
    const Theme &look = theme(this);
    m_pits->setAccessibleName(tr("Pit of the cook that is thought up"));
    m_pits->setMinimumWidth(look.px(180));
    m_amount->setTextStyle(TextStyle::NumeralHuge);
    m_words->setWordWrap(true);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(7));
    auto *levers = new QGridLayout;
    levers->setHorizontalSpacing(look.space(3));
    levers->setVerticalSpacing(look.space(2));
    levers->setColumnStretch(1, 1);
    addLever(levers, Hours, tr("Hours"), Dimension::Duration);
    addLever(levers, PitHeat, tr("Pit"), Dimension::Temperature);
    addLever(levers, Outside, tr("Outside"), Dimension::Temperature);
    addLever(levers, Wind, tr("Wind"), Dimension::Speed);
    addLever(levers, Moisture, tr("Wood, dry basis"), Dimension::Moisture);
    addLever(levers, Food, tr("Food"), Dimension::Mass);
    row->addLayout(levers, 1);
    auto *answer = new QVBoxLayout;
    answer->setSpacing(look.space(2));
    answer->addWidget(m_amount);
    answer->addWidget(m_likely);
    answer->addWidget(m_parts);
    answer->addWidget(m_words);
    answer->addStretch(1);
    row->addLayout(answer, 1);
    connect(m_pits, &QComboBox::currentIndexChanged, this, [this] {
        startFrom(m_pits->currentData().toLongLong());
        this->answer();
    });
}

void FireWhatIf::addLever(QGridLayout *grid, Lever lever, const QString &name, Dimension dimension)
{
    const Theme &look = theme(this);
    const int line = grid->rowCount();
    auto *label = new TextLabel(name, TextStyle::Label, Role::InkMuted, this);
    auto *slider = new QSlider(Qt::Horizontal, this);
    slider->setAccessibleName(name);
    slider->setMinimumWidth(look.px(160));
    auto *value = new TextLabel(QString(), TextStyle::BodyStrong, Role::Ink, this);
    value->setMinimumWidth(look.px(72));
    value->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    grid->addWidget(label, line, 0);
    grid->addWidget(slider, line, 1);
    grid->addWidget(value, line, 2);
    m_levers[lever] = {slider, value, dimension};
    connect(slider, &QSlider::valueChanged, this, &FireWhatIf::answer);
}

const Unit &FireWhatIf::unitOf(Lever lever) const
{
    if (lever == Hours)
        return *findUnit(Dimension::Duration, QStringLiteral("h"));
    return defaultUnit(m_levers[lever].dimension,
                       m_metric ? UnitSystem::Metric : UnitSystem::UsCustomary);
}

qint64 FireWhatIf::base(Lever lever) const
{
    return fromUnit(m_levers[lever].slider->value(), unitOf(lever));
}

void FireWhatIf::setBase(Lever lever, qint64 base)
{
    const Reach reach = reachOf(lever, m_metric);
    const double shown = toUnit(base, unitOf(lever));
    m_levers[lever].slider->setValue(static_cast<int>(std::lround(shown / reach.step)) *
                                     reach.step);
}

void FireWhatIf::setRanges()
{
    for (int i = 0; i < LeverCount; ++i) {
        const auto lever = static_cast<Lever>(i);
        const Reach reach = reachOf(lever, m_metric);
        QSlider *slider = m_levers[lever].slider;
        const QSignalBlocker quiet(slider);
        slider->setRange(reach.from, reach.to);
        slider->setSingleStep(reach.step);
        slider->setPageStep(5 * reach.step);
    }
}

void FireWhatIf::showFuel(const Books &books, const FuelAnswer &fuel, RecordId first)
{
    const bool otherUnits = m_books == nullptr || m_metric != books.yard().metric;
    m_books = &books;
    m_fuel = fuel;
    m_metric = books.yard().metric;
    if (otherUnits)
        setRanges();
    {
        const QSignalBlocker quiet(m_pits);
        m_pits->clear();
        for (const Pit &pit : books.pits)
            if (!pit.retired)
                m_pits->addItem(pit.name, QVariant::fromValue<qint64>(pit.id));
        m_pits->setCurrentIndex(
            std::max(0, m_pits->findData(QVariant::fromValue<qint64>(m_pit != 0 ? m_pit : first))));
    }
    if (otherUnits || m_pit != m_pits->currentData().toLongLong())
        startFrom(m_pits->currentData().toLongLong());
    answer();
}

void FireWhatIf::choosePit(RecordId pit)
{
    const int at = m_pits->findData(QVariant::fromValue<qint64>(pit));
    if (at >= 0)
        m_pits->setCurrentIndex(at);
}

// A twelve-hour cook as this pit's usually are, in the usual weather of the day.
void FireWhatIf::startFrom(RecordId pit)
{
    m_pit = pit;
    if (m_books == nullptr || pit == 0)
        return;
    PlannedFire fire = middleFire(*m_books, m_fuel, pit);
    for (const PitFuel &one : std::as_const(m_fuel.pits)) {
        if (one.pit != pit)
            continue;
        fire.outside = one.usual.outside;
        fire.wind = one.usual.wind;
    }
    for (LeverRow &row : m_levers)
        row.slider->blockSignals(true);
    setBase(Hours, durationFromHours(12).base());
    setBase(PitHeat, fire.target.base());
    setBase(Outside, fire.outside.base());
    setBase(Wind, fire.wind.value_or(kUsualWind).base());
    setBase(Moisture, domain::Moisture::ofBase(20000).base());
    setBase(Food, fire.food.value_or(Mass()).base());
    for (LeverRow &row : m_levers)
        row.slider->blockSignals(false);
}

PlannedFire FireWhatIf::fire() const
{
    PlannedFire fire;
    fire.pit = m_pit;
    fire.length = Duration::ofBase(base(Hours));
    fire.target = Temperature::ofBase(base(PitHeat));
    fire.outside = Temperature::ofBase(base(Outside));
    fire.wind = Speed::ofBase(base(Wind));
    fire.food = Mass::ofBase(base(Food));
    return fire;
}

void FireWhatIf::answer()
{
    if (m_books == nullptr || m_pit == 0)
        return;
    const QLocale locale = FireWords(*m_books).locale();
    for (int i = 0; i < LeverCount; ++i) {
        const auto lever = static_cast<Lever>(i);
        const QString text = formatQuantity(base(lever), unitOf(lever), locale, 0);
        m_levers[lever].value->setText(text);
        m_levers[lever].slider->setAccessibleDescription(text);
    }
    const PlannedFire asked = fire();
    const ExpectedUse use = expectedUse(*m_books, m_fuel, asked);
    const auto moisture = domain::Moisture::ofBase(base(Moisture));
    const UseWords words = useWords(*m_books, asked, use, moisture, wordingOf(*m_books));
    const qsizetype gap = words.amount.lastIndexOf(QChar(0x00A0));
    m_amount->setValue(words.amount.left(gap), words.amount.mid(gap + 1));
    m_amount->setCaption(tr("of wood as it is"));
    m_likely->setText(tr("likely %1").arg(words.likely));
    QVector<ShareBar::Part> parts;
    for (const UsePart &part : usePartsOf(use))
        parts.append({part.label,
                      QString(formatNumber(100.0 * part.share, 0, locale) + QChar(0x202F) +
                              QLatin1Char('%')),
                      part.share});
    m_parts->setParts(parts);
    m_sentence = words.sentence();
    m_words->setText(QString(words.fire + QStringLiteral(". ") +
                             tr("9 in 10 such cooks lie in the range.") + QLatin1Char(' ') +
                             use.basis));
}

} // namespace rickyard::views
