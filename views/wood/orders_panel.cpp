#include "views/wood/orders_panel.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/domain/plan/order_life.h"
#include "models/items/wording.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/text_label.h"
#include "views/wood/order_row.h"
#include "views/wood/order_sheet.h"

#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using domain::OrderState;
using domain::RecordId;
using domain::TableId;
using domain::WoodOrder;

OrdersPanel::OrdersPanel(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_card(new Card(tr("Orders under way"))),
      m_sheet(new OrderSheet(context)), m_column(new QVBoxLayout),
      m_none(new TextLabel(tr("No wood is on order."), TextStyle::Body, Role::InkMuted)),
      m_proposalBox(new QWidget), m_proposal(new TextLabel(QString())),
      m_new(new QPushButton(icon(QStringLiteral("add")), tr("New order"))),
      m_take(new QPushButton(tr("Write the order")))
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, look.space(4));
    outer->addWidget(m_card);
    m_new->setAccessibleName(tr("Write a new order"));
    m_new->setEnabled(!m_context.readOnly());
    m_card->addHeadingWidget(m_new);
    auto *proposed = new QHBoxLayout(m_proposalBox);
    proposed->setContentsMargins(0, 0, 0, 0);
    proposed->setSpacing(look.space(3));
    m_proposal->setWordWrap(true);
    m_take->setAccessibleName(tr("Write the order that is proposed"));
    m_take->setEnabled(!m_context.readOnly());
    proposed->addWidget(m_proposal, 1);
    proposed->addWidget(m_take, 0, Qt::AlignTop);
    m_card->body()->addWidget(m_proposalBox);
    m_card->body()->addWidget(m_sheet);
    m_card->body()->addWidget(m_none);
    m_column->setSpacing(0);
    m_card->body()->addLayout(m_column);
    m_sheet->hide();
    m_soon.setSingleShot(true);
    m_soon.setInterval(0);
    connect(&m_soon, &QTimer::timeout, this, &OrdersPanel::refresh);
    connect(m_new, &QPushButton::clicked, this, &OrdersPanel::startNew);
    connect(m_take, &QPushButton::clicked, this, &OrdersPanel::startProposed);
    connect(m_sheet, &OrderSheet::closed, this, [this] { openSheet(false); });
    connect(m_sheet, &OrderSheet::saved, this, [this](qint64 order) {
        openSheet(false);
        refresh();
        if (OrderRow *one = row(order))
            one->openPanel(OrderRow::Panel::Message);
    });
    connect(&m_context.verbs.yard(), &workspace::Workspace::changed, this, &OrdersPanel::follow);
    connect(&m_context.answers, &workspace::AnswersService::updated, this,
            &OrdersPanel::showProposal);
    refresh();
}

void OrdersPanel::follow(const workspace::Changes &changes)
{
    for (TableId table :
         {TableId::WoodOrder, TableId::Supplier, TableId::Species, TableId::Lot, TableId::Yard})
        if (changes.touches(table)) {
            m_soon.start();
            return;
        }
}

// The late ones first, then by the day they should come; drafts last.
QVector<RecordId> OrdersPanel::underWay() const
{
    const domain::Books &books = m_context.books();
    const domain::Wording wording = domain::wordingOf(books);
    QVector<QPair<QDate, RecordId>> open;
    QVector<RecordId> drafts;
    for (const WoodOrder &order : books.orders) {
        if (order.state == OrderState::Draft)
            drafts << order.id;
        else if (domain::orderIsOpen(order))
            open.append({domain::orderDue(books, order, wording).day, order.id});
    }
    std::stable_sort(open.begin(), open.end());
    QVector<RecordId> all;
    for (const auto &[day, id] : open)
        all << id;
    return all + drafts;
}

QVector<OrderRow *> OrdersPanel::rows() const
{
    QVector<OrderRow *> all;
    for (int i = 0; i < m_column->count(); ++i)
        if (auto *one = qobject_cast<OrderRow *>(m_column->itemAt(i)->widget()))
            all << one;
    return all;
}

// Rows stay as long as their order does, so that what is open or typed in one survives.
void OrdersPanel::refresh()
{
    const QVector<RecordId> wanted = underWay();
    const QList<RecordId> shown = m_rows.keys();
    for (const RecordId id : shown)
        if (!wanted.contains(id)) {
            OrderRow *gone = m_rows.take(id);
            m_column->removeWidget(gone);
            gone->hide();
            gone->deleteLater();
        }
    for (int i = 0; i < wanted.size(); ++i) {
        OrderRow *one = m_rows.value(wanted.at(i));
        if (one == nullptr) {
            one = new OrderRow(m_context, wanted.at(i));
            connect(one, &OrderRow::cameAsked, this, &OrdersPanel::cameAsked);
            connect(one, &OrderRow::changeAsked, this, &OrdersPanel::changeAsked);
            m_rows.insert(wanted.at(i), one);
        } else {
            one->refresh();
        }
        if (m_column->indexOf(one) != i) {
            m_column->removeWidget(one);
            m_column->insertWidget(i, one);
        }
        one->setHairline(i > 0);
        one->show();
    }
    m_none->setVisible(wanted.isEmpty() && m_sheet->isHidden());
    showProposal();
}

void OrdersPanel::showProposal()
{
    const domain::Books &books = m_context.books();
    const bool ready = m_context.answers.ready();
    const domain::WoodAnswer &wood = m_context.answers.answers().wood;
    const bool any = ready && wood.orderBy.isValid() && wood.units > 0 &&
                     books.suppliers.contains(wood.supplier) &&
                     books.species.contains(wood.species);
    m_proposalBox->setVisible(any && m_sheet->isHidden());
    if (any)
        m_proposal->setText(
            tr("Proposed: %1 of %2 from %3, by %4.")
                .arg(wood.amountInUnit, books.species.value(wood.species).name.toLower(),
                     books.suppliers.value(wood.supplier).name,
                     domain::dayWithWeekday(wood.orderBy, domain::wordingOf(books))));
}

QString OrdersPanel::proposal() const
{
    return m_proposalBox->isHidden() ? QString() : m_proposal->text();
}

void OrdersPanel::openSheet(bool open)
{
    m_sheet->setVisible(open);
    m_new->setEnabled(!open && !m_context.readOnly());
    m_none->setVisible(!open && m_rows.isEmpty());
    showProposal();
    if (!open)
        m_new->setFocus(Qt::OtherFocusReason);
}

void OrdersPanel::startNew()
{
    openSheet(true);
    m_sheet->start();
}

void OrdersPanel::startProposed()
{
    const domain::WoodAnswer &wood = m_context.answers.answers().wood;
    const QDate today = items::toLocal(m_context.books(), m_context.verbs.now()).date();
    openSheet(true);
    m_sheet->start(draftOf(m_context.books(), wood.supplier, wood.species,
                           static_cast<double>(wood.units), today));
}

} // namespace rickyard::views
