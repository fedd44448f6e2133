#include "views/wood/offer_panel.h"

#include "models/domain/answers/answers.h"
#include "models/domain/wood/offer_words.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"
#include "views/wood/offer_row.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <QtConcurrent>

#include <algorithm>

namespace rickyard::views {

using domain::OfferComparison;
using domain::OfferLine;
using domain::TableId;

namespace {

// One seed for all: the same offers read the same whenever they are looked at.
constexpr quint64 kOfferSeed = 20250101;

} // namespace

OfferPanel::OfferPanel(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_card(new Card(tr("Offers by the price of their heat"))),
      m_pill(new StatusPill(Role::Info, QString())), m_sentence(new SentenceLabel),
      m_rows(new QVBoxLayout), m_refused(new QVBoxLayout),
      m_method(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, look.space(4));
    column->addWidget(m_card);
    m_card->addHeadingWidget(m_pill);
    m_card->body()->addWidget(m_sentence);
    m_rows->setSpacing(0);
    m_card->body()->addLayout(m_rows);
    m_refused->setSpacing(look.space(2));
    m_card->body()->addLayout(m_refused);
    m_method->setWordWrap(true);
    m_card->body()->addWidget(m_method);
    m_soon.setSingleShot(true);
    m_soon.setInterval(0);
    connect(&m_soon, &QTimer::timeout, this, &OfferPanel::start);
    connect(&m_watcher, &QFutureWatcher<OfferComparison>::finished, this, [this] {
        const OfferComparison done = m_watcher.result();
        if (m_again)
            start();
        else
            take(done);
    });
    connect(&m_context.verbs.yard(), &workspace::Workspace::changed, this, &OfferPanel::follow);
    connect(&m_context.answers, &workspace::AnswersService::updated, this, [this] {
        if (typicalCook() != m_cookUsed)
            refresh();
    });
    hide();
    refresh();
}

OfferPanel::~OfferPanel()
{
    m_watcher.waitForFinished();
}

QString OfferPanel::sentence() const
{
    return m_sentence->plainText();
}

std::optional<domain::Heat> OfferPanel::typicalCook() const
{
    return m_context.answers.ready()
               ? domain::typicalCookHeat(m_context.answers.answers().fuel.cooks)
               : std::nullopt;
}

void OfferPanel::follow(const workspace::Changes &changes)
{
    for (TableId table :
         {TableId::Offer, TableId::Supplier, TableId::Species, TableId::Lot,
          TableId::MoistureReading, TableId::OvenTest, TableId::WoodOrder, TableId::Yard}) {
        if (changes.touches(table)) {
            refresh();
            return;
        }
    }
}

void OfferPanel::refresh()
{
    m_current = false;
    m_soon.start();
}

void OfferPanel::start()
{
    m_again = m_watcher.isRunning();
    if (m_again)
        return;
    m_cookUsed = typicalCook();
    const domain::Books books = m_context.books();
    const bool open = std::any_of(books.offers.cbegin(), books.offers.cend(),
                                  [](const domain::Offer &offer) { return !offer.closed; });
    if (!open) { // nothing to reckon, and nothing to wait for
        take({});
        return;
    }
    const domain::Wording wording = domain::wordingOf(books);
    domain::OfferTrial trial;
    trial.seed = kOfferSeed;
    m_watcher.setFuture(QtConcurrent::run([books, wording, trial, cook = m_cookUsed] {
        return domain::compareOffers(books, cook, trial, wording);
    }));
}

void OfferPanel::take(const OfferComparison &comparison)
{
    m_comparison = comparison;
    m_current = !m_soon.isActive();
    QVector<SentencePart> parts;
    for (const domain::SentencePart &part : comparison.headline.sentence)
        parts.append({part.text, part.emphasised, Role::Accent});
    m_sentence->setParts(parts);
    const bool several = comparison.priced() > 1;
    const bool settled = comparison.headline.standing == domain::Standing::Good;
    m_pill->setStatus(settled ? Role::Good : Role::Watch,
                      !several ? QString() : (settled ? tr("settled") : tr("close")));
    showRows();
    showRefused();
    setVisible(!comparison.lines.isEmpty());
    Q_EMIT compared();
}

void OfferPanel::showRows()
{
    clearLayout(m_rows);
    const domain::Wording wording = domain::wordingOf(m_context.books());
    const OfferScale scale = scaleOf(m_comparison);
    bool first = true;
    for (const OfferLine &line : m_comparison.lines) {
        if (!line.priced())
            continue;
        auto *row = new OfferRow(line, scale, first, wording);
        connect(row, &OfferRow::clicked, this,
                [this, offer = line.offer] { Q_EMIT opened(offer); });
        m_rows->addWidget(row);
        first = false;
    }
    QString method;
    for (const domain::Reason &reason : m_comparison.headline.reasons)
        if (reason.label == QStringLiteral("What varied"))
            method = reason.value;
    m_method->setText(method.isEmpty()
                          ? QString()
                          : tr("The dot is the figure in use, the bar holds 80 of 100 tries, the "
                               "line is the cheapest offer. %1. Prices of heat and of dry wood "
                               "count what the supplier's record lets expect.")
                                .arg(method));
    m_method->setVisible(!method.isEmpty());
}

void OfferPanel::showRefused()
{
    while (QLayoutItem *item = m_refused->takeAt(0)) {
        if (QLayout *row = item->layout())
            clearLayout(row);
        delete item;
    }
    for (const OfferLine &line : m_comparison.lines) {
        if (line.priced())
            continue;
        const bool never = m_context.books()
                               .species.value(m_context.books().offers.value(line.offer).species)
                               .neverBurn;
        auto *row = new QHBoxLayout;
        row->setSpacing(theme(this).space(3));
        row->addWidget(new StatusPill(never ? Role::Act : Role::Watch,
                                      never ? tr("never burn") : tr("not compared")),
                       0, Qt::AlignTop);
        auto *words =
            new TextLabel(QString(domain::offerName(line) + QStringLiteral(". ") + line.refused));
        words->setWordWrap(true);
        row->addWidget(words, 1);
        m_refused->addLayout(row);
    }
}

} // namespace rickyard::views
