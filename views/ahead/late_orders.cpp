#include "views/ahead/late_orders.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/domain/plan/order_life.h"
#include "models/items/wording.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::LateOrder;
using domain::TableId;

LateOrders::LateOrders(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_card(new Card(tr("Wood that should have come"))),
      m_rows(new QVBoxLayout)
{
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(m_card);
    m_rows->setSpacing(theme(this).space(2));
    m_card->body()->addLayout(m_rows);
    connect(&m_context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                for (TableId table :
                     {TableId::WoodOrder, TableId::Supplier, TableId::Lot, TableId::Yard})
                    if (changes.touches(table)) {
                        refresh();
                        return;
                    }
            });
    refresh();
}

void LateOrders::refresh()
{
    while (QLayoutItem *item = m_rows->takeAt(0)) {
        if (QWidget *row = item->widget()) {
            row->hide();
            row->deleteLater(); // its button may be what led here
        }
        delete item;
    }
    const domain::Books &books = m_context.books();
    const Theme &look = theme(this);
    const QDate today = items::toLocal(books, m_context.verbs.now()).date();
    const auto late = domain::lateOrders(books, today, domain::wordingOf(books));
    for (const LateOrder &one : late) {
        auto *holder = new QWidget;
        auto *row = new QHBoxLayout(holder);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(look.space(3));
        QString asked = one.asked;
        asked[0] = asked.at(0).toUpper();
        auto *words =
            new TextLabel(QString(one.sentence + QLatin1Char(' ') + asked + QLatin1Char('.')));
        words->setWordWrap(true);
        row->addWidget(new StatusPill(Role::Act, tr("%1 late").arg(domain::daysWords(one.days))), 0,
                       Qt::AlignVCenter);
        row->addWidget(words, 1);
        auto *ask = new QPushButton(tr("Asked today"));
        ask->setAccessibleName(tr("Note that they were asked today: %1").arg(one.sentence));
        ask->setEnabled(!one.askedToday && !m_context.readOnly());
        auto *open = new QPushButton(tr("Open"));
        open->setProperty("role", "quiet");
        open->setAccessibleName(tr("Open the order: %1").arg(one.sentence));
        connect(ask, &QPushButton::clicked, this, [this, order = one.order] {
            const auto done = m_context.verbs.stepOrder(order, domain::OrderStep::Ask);
            if (!done)
                m_context.refuse(done.problems());
            else
                m_context.say(tr("Noted: asked today. Undo takes it back."));
        });
        connect(open, &QPushButton::clicked, this, [this, order = one.order] {
            Q_EMIT opened({TableId::WoodOrder, order});
        });
        row->addWidget(ask);
        row->addWidget(open);
        m_rows->addWidget(holder);
    }
    setVisible(!late.isEmpty());
}

} // namespace rickyard::views
