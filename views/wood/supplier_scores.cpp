#include "views/wood/supplier_scores.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/domain/plan/scorecard.h"
#include "models/domain/quantities/units.h"
#include "views/records/figure_table.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/text_label.h"
#include "views/wood/wood_words.h"

#include <QVBoxLayout>

#include <cmath>

namespace rickyard::views {

using domain::Scorecard;
using domain::TableId;

namespace {

constexpr int kMostScoresShown = 6;

QVector<items::DerivedModel::Column> scoreColumns()
{
    return {{SupplierScores::tr("Supplier"), false},     {SupplierScores::tr("Orders"), true},
            {SupplierScores::tr("On time"), true},       {SupplierScores::tr("Days late"), true},
            {SupplierScores::tr("Short by"), true},      {SupplierScores::tr("Wetter by"), true},
            {SupplierScores::tr("A seasoned lb"), true}, {SupplierScores::tr("Rests on"), false}};
}

QString signedFigure(double value, int decimals, const QString &unit)
{
    return withUnit(trueMinus(domain::formatNumber(value, decimals, woodLocale())), unit);
}

// A half only where there is one.
QString daysFigure(double days)
{
    const bool whole = std::abs(days - std::round(days)) < 0.05;
    return domain::formatNumber(days, whole ? 0 : 1, woodLocale());
}

items::DerivedRow rowOf(const Scorecard &card, const domain::Wording &wording)
{
    const auto tally = [](const domain::Tally &of, double scale) {
        return of.count == 0 ? std::nullopt : std::optional(scale * of.mean);
    };
    const auto shortBy = tally(card.record.shortBy, 100);
    const auto wetter = tally(card.record.wetPoints, 1);
    const auto share = card.onTimeShare();
    items::DerivedRow row;
    row.link = {TableId::Supplier, card.supplier};
    row.cells
        << items::DerivedCell{card.name, {}, {}}
        << FigureTable::figure(QString::number(card.orders), double(card.orders))
        << FigureTable::figure(SupplierScores::tr("%1 of %2").arg(card.onTime).arg(card.judged),
                               share)
        << FigureTable::figure(SupplierScores::tr("%1, worst %2")
                                   .arg(daysFigure(card.medianLate.value_or(0)),
                                        daysFigure(card.worstLate.value_or(0))),
                               card.medianLate)
        << FigureTable::figure(signedFigure(shortBy.value_or(0), 0, QStringLiteral("%")), shortBy)
        << FigureTable::figure(signedFigure(wetter.value_or(0), 1, SupplierScores::tr("points")),
                               wetter)
        << FigureTable::figure(
               domain::moneyWords(card.centsPerSeasonedPound.value_or(0), wording, 3),
               card.centsPerSeasonedPound)
        << items::DerivedCell{card.empty() ? SupplierScores::tr("No history yet")
                              : card.record.deliveries == 1
                                  ? SupplierScores::tr("1 delivery")
                                  : SupplierScores::tr("%1 deliveries").arg(card.record.deliveries),
                              {},
                              {}};
    return row;
}

} // namespace

SupplierScores::SupplierScores(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_table(new FigureTable(scoreColumns(), tr("How suppliers keep their word"))),
      m_card(new Card(tr("How they keep their word")))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, look.space(4));
    m_table->setWidest(260);
    m_card->body()->addWidget(m_table);
    auto *note = new TextLabel(
        tr("Days late: the middle of all orders and the worst, against the day promised, else the "
           "day wished or "
           "their usual time; on time counts as 0. Short by: of what was paid for, as measured. "
           "Wetter by: points of dry basis over the promise, read within two weeks. Below zero it "
           "was better than promised."),
        TextStyle::Caption, Role::InkMuted);
    note->setWordWrap(true);
    m_card->body()->addWidget(note);
    column->addWidget(m_card);
    m_soon.setSingleShot(true);
    m_soon.setInterval(0);
    connect(&m_soon, &QTimer::timeout, this, &SupplierScores::refresh);
    connect(m_table, &FigureTable::opened, this,
            [this](const domain::Link &link) { Q_EMIT opened(link.id); });
    connect(&m_context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                for (TableId table : {TableId::Supplier, TableId::WoodOrder, TableId::Lot,
                                      TableId::MoistureReading, TableId::OvenTest, TableId::Yard})
                    if (changes.touches(table)) {
                        m_stale = true;
                        if (isVisible())
                            m_soon.start();
                        return;
                    }
            });
}

void SupplierScores::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (m_stale)
        refresh();
    fitToRows(*m_table, kMostScoresShown);
}

void SupplierScores::refresh()
{
    const domain::Wording wording = domain::wordingOf(m_context.books());
    QVector<items::DerivedRow> rows;
    for (const Scorecard &card : domain::scorecards(m_context.books(), wording))
        rows << rowOf(card, wording);
    m_table->setRows(rows);
    m_stale = false;
    m_card->setVisible(!rows.isEmpty());
    fitToRows(*m_table, kMostScoresShown);
}

} // namespace rickyard::views
