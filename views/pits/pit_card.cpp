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
constexpr double kCreeping = 0.5; // of the way to the limit
} // namespace

int pitIndex(const Books &books, RecordId pit)
{
    return static_cast<int>(books.pits.keys().indexOf(pit));
}

PitCard::PitCard(const Pit &pit, int index, QWidget *parent)
    : QWidget(parent), m_pit(pit.id), m_index(index), m_card(new Card(pit.name, this)),
      m_pill(new StatusPill(Role::Info, tr("Not judged yet"), this)), m_excess(new Numeral(this)),
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
    auto *choose = new QPushButton(tr("Show its charts"), this);
    choose->setProperty("role", "quiet");
    choose->setAccessibleName(tr("Show %1 in the charts").arg(pit.name));
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
    m_excess->setValue(QString(), QString());
    m_excess->setCaption(tr("no cook judged yet"));
    m_excess->setRole(Role::Ink);
    m_pill->setStatus(Role::Info, tr("Not judged yet"));
    m_words->setText(QString());
    for (const PitFuel &pit : fuel.pits)
        if (pit.pit == m_pit)
            showStanding(books, pit);
}

void PitCard::showStanding(const Books &books, const PitFuel &pit)
{
    const FireWords words(books);
    QStringList lines;
    const auto day = [&](RecordId cook) { return words.day(books.cooks.value(cook).lit); };
    if (!pit.last.isEmpty()) {
        const bool named = pit.named() && pit.climb;
        const bool less = pit.flag == WatchFlag::Less && pit.fall;
        const bool watch = !named && pit.nearness() >= kCreeping;
        const double shown = named  ? pit.climb->percent / 100.0
                             : less ? pit.fall->percent / 100.0
                                    : pit.excessOfLast;
        const QString percent = words.percent(shown);
        m_excess->setValue(percent.left(percent.size() - 2), QStringLiteral("%"));
        m_excess->setRole(named ? Role::Act : Role::Ink);
        m_excess->setCaption(
            named  ? tr("since %1").arg(day(pit.climb->since))
            : less ? tr("since %1").arg(day(pit.fall->since))
                   : tr("last %1").arg(countOf(static_cast<int>(pit.last.size()), tr("cook"))));
        m_pill->setStatus(named   ? Role::Act
                          : watch ? Role::Watch
                          : less  ? Role::Info
                                  : Role::Good,
                          named   ? tr("Burns too much")
                          : watch ? tr("Creeping up")
                          : less  ? tr("Burns less")
                                  : tr("As usual"));
        m_line->setRole(Theme::chartRole(m_index), named ? Role::Act : Role::Accent);
        lines << (pit.nearness() >= 1.0
                      ? tr("Its sum of scores stands at %1, the flag goes up above %2.")
                            .arg(formatNumber(pit.up, 1, words.locale()),
                                 formatNumber(pit.limit, 1, words.locale()))
                      : tr("%1 of the way to a flag.").arg(words.share(pit.nearness())));
    }
    if (pit.mended)
        lines << tr("Mended %1.").arg(words.day(*pit.mended));
    lines << tr("An hour at %1 takes about %2 in today's usual weather (%3).")
                 .arg(words.temperature(pit.usual.target).text(), words.heat(pit.hourly).text(),
                      words.temperature(pit.usual.outside).text());
    m_words->setText(lines.join(QLatin1Char(' ')));
}

} // namespace rickyard::views
