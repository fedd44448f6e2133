#include "views/pits/pit_card.h"

#include "models/domain/fire/fuel_words.h"
#include "views/charts/sparkline.h"
#include "views/fire/fire_words.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/numeral.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {
constexpr int kCooksInLine = 12;
} // namespace

int pitIndex(const Books &books, RecordId pit)
{
    return static_cast<int>(books.pits.keys().indexOf(pit));
}

PitCard::PitCard(const Pit &pit, int index, QWidget *parent)
    : QWidget(parent), m_pit(pit.id), m_index(index), m_card(new Card(pit.name, this)),
      m_pill(new StatusPill(Role::Info, tr("No norm yet"), this)), m_excess(new Numeral(this)),
      m_line(new Sparkline(tr("%1: burned over expected, last %2 cooks")
                               .arg(pit.name, QString::number(kCooksInLine)),
                           this)),
      m_words(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted, this))
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(m_card);
    m_card->addHeadingWidget(m_pill);
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(4));
    row->addWidget(m_excess);
    row->addWidget(m_line, 1);
    m_card->body()->addLayout(row);
    m_words->setWordWrap(true);
    m_card->body()->addWidget(m_words);
    m_card->body()->addStretch(1);
    auto *buttons = new QHBoxLayout;
    auto *choose = new QPushButton(tr("Show its line"), this);
    choose->setProperty("role", "quiet");
    choose->setAccessibleName(tr("Show the line of %1 in the chart").arg(pit.name));
    auto *open = new QPushButton(tr("Open"), this);
    open->setProperty("role", "quiet");
    open->setAccessibleName(tr("Open the pit %1").arg(pit.name));
    connect(choose, &QPushButton::clicked, this, [this] { Q_EMIT chosen(m_pit); });
    connect(open, &QPushButton::clicked, this, [this] { Q_EMIT opened(m_pit); });
    buttons->addWidget(choose);
    buttons->addWidget(open);
    buttons->addStretch(1);
    m_card->body()->addLayout(buttons);
    setMinimumWidth(look.px(270));
}

void PitCard::showFuel(const Books &books, const FuelAnswer &fuel)
{
    m_card->setHeading(books.pits.value(m_pit).name);
    QVector<double> ratios;
    QVector<double> low;
    QVector<double> high;
    for (const CookFuel &cook : fuel.cooks) {
        if (cook.pit != m_pit || !cook.excess || !cook.expected || !cook.lower || !cook.upper)
            continue;
        ratios << 1.0 + *cook.excess;
        low << *cook.lower / *cook.expected;
        high << *cook.upper / *cook.expected;
    }
    const auto last = std::min<qsizetype>(kCooksInLine, ratios.size());
    m_line->setValues(ratios.last(last));
    m_line->setBand(low.last(last), high.last(last));
    m_line->setLimit(ratios.isEmpty() ? std::nullopt : std::optional(1.0 + kNamedExcess));
    m_excess->setValue(QString(), QString());
    m_excess->setCaption(tr("against its norm"));
    m_excess->setRole(Role::Ink);
    m_pill->setStatus(Role::Info, tr("No norm yet"));
    m_words->setText(tr("No cook yet."));
    for (const PitNorm &norm : fuel.pits)
        if (norm.pit == m_pit)
            showNorm(books, norm);
}

void PitCard::showNorm(const Books &books, const PitNorm &norm)
{
    if (!norm.fitted) {
        m_words->setText(norm.why);
        return;
    }
    const FireWords words(books);
    const QString percent = words.percent(norm.meanExcessOfLast);
    m_excess->setValue(percent.left(percent.size() - 2), QStringLiteral("%"));
    m_excess->setCaption(tr("mean of its last %1 cooks").arg(kLastCooks));
    const bool watch = norm.meanExcessOfLast > kNamedExcess / 2;
    const bool below = norm.meanExcessOfLast < -kNamedExcess;
    m_pill->setStatus(norm.named ? Role::Act
                      : watch    ? Role::Watch
                      : below    ? Role::Info
                                 : Role::Good,
                      norm.named ? tr("Burns too much")
                      : watch    ? tr("Creeping up")
                      : below    ? tr("Burns less")
                                 : tr("As usual"));
    m_line->setRole(Theme::chartRole(m_index), norm.named ? Role::Act : Role::Accent);
    QStringList lines;
    lines << tr("Norm from %1.").arg(countOf(norm.cooks, QStringLiteral("cook")));
    if (norm.named)
        lines << tr("About %1 extra a cook since %2.")
                     .arg(words.heat(norm.extraPerCook).text(),
                          words.day(books.cooks.value(norm.sinceCook).lit));
    if (norm.mended)
        lines << tr("Anew since the mending of %1.").arg(words.day(*norm.mended));
    m_words->setText(lines.join(QLatin1Char(' ')));
}

} // namespace rickyard::views
