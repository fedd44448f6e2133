#include "views/wood/order_row.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/items/wording.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/field_row.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"
#include "views/wood/wood_words.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QPainter>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::OrderState;
using domain::OrderStep;
using domain::TableId;
using domain::WoodOrder;

namespace {

QDate todayIn(const PageContext &context)
{
    return items::toLocal(context.books(), context.verbs.now()).date();
}

QString stateWords(const domain::Books &books, const WoodOrder &order,
                   const domain::Wording &wording)
{
    if (order.state == OrderState::Draft)
        return order.promised.isValid() ? OrderRow::tr("not sent yet, wished for %1")
                                              .arg(domain::dayWithWeekday(order.promised, wording))
                                        : OrderRow::tr("not sent yet");
    return domain::orderDue(books, order, wording).basis;
}

} // namespace

OrderRow::OrderRow(PageContext &context, domain::RecordId order, QWidget *parent)
    : QWidget(parent), m_context(context), m_order(order)
{
    build();
    refresh();
}

void OrderRow::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, look.space(3), 0, look.space(3));
    column->setSpacing(look.space(3));
    auto *top = new QHBoxLayout;
    top->setSpacing(look.space(4));
    auto *words = new QVBoxLayout;
    words->setSpacing(look.px(2));
    m_what = new TextLabel(QString(), TextStyle::BodyStrong);
    m_what->setWordWrap(true);
    m_standing = new TextLabel(QString(), TextStyle::Body, Role::InkMuted);
    m_standing->setWordWrap(true);
    m_late = new TextLabel(QString(), TextStyle::Body);
    m_late->setWordWrap(true);
    words->addWidget(m_what);
    words->addWidget(m_standing);
    words->addWidget(m_late);
    m_pill = new StatusPill(Role::Info, QString());
    top->addLayout(words, 1);
    top->addWidget(m_pill, 0, Qt::AlignTop);
    column->addLayout(top);
    auto *actions = new QWidget;
    buildButtons(actions);
    column->addWidget(actions);
    m_messagePanel = buildMessage();
    m_promisePanel = buildPromise();
    column->addWidget(m_messagePanel);
    column->addWidget(m_promisePanel);
    m_messagePanel->hide();
    m_promisePanel->hide();
}

QPushButton *OrderRow::button(QWidget *into, const QString &text, const QString &accessible)
{
    auto *one = new QPushButton(text);
    one->setAccessibleName(accessible);
    one->setEnabled(!m_context.readOnly());
    into->layout()->addWidget(one);
    return one;
}

void OrderRow::buildButtons(QWidget *into)
{
    auto *flow = new FlowLayout(into);
    flow->setContentsMargins(0, 0, 0, 0);
    m_send = button(into, tr("Send it"), tr("Send this order: stamps today and shows the message"));
    m_came = button(into, tr("It came"), tr("This order came: open the receiving sheet"));
    m_promised = button(into, tr("Promised for…"), tr("Note the day this order is promised for"));
    m_asked = button(into, tr("Asked today"), tr("Note that the supplier was asked today"));
    m_read = button(into, tr("Message"), tr("Show the message of this order"));
    m_change = button(into, tr("Change"), tr("Change this order in its form"));
    m_cancel = button(into, tr("Cancel order"), tr("Cancel this order"));
    for (QPushButton *quiet : {m_read, m_change, m_cancel})
        quiet->setProperty("role", "quiet");
    m_read->setEnabled(true); // reading and copying change nothing
    connect(m_send, &QPushButton::clicked, this, &OrderRow::send);
    connect(m_came, &QPushButton::clicked, this, [this] { Q_EMIT cameAsked(m_order); });
    connect(m_change, &QPushButton::clicked, this, [this] { Q_EMIT changeAsked(m_order); });
    connect(m_read, &QPushButton::clicked, this,
            [this] { openPanel(m_panel == Panel::Message ? Panel::None : Panel::Message); });
    connect(m_promised, &QPushButton::clicked, this,
            [this] { openPanel(m_panel == Panel::Promise ? Panel::None : Panel::Promise); });
    connect(m_asked, &QPushButton::clicked, this,
            [this] { step(OrderStep::Ask, tr("Noted: asked today. Undo takes it back.")); });
    connect(m_cancel, &QPushButton::clicked, this, [this] {
        step(OrderStep::Cancel, tr("The order is cancelled. Undo brings it back."));
    });
}

QWidget *OrderRow::buildMessage()
{
    const Theme &look = theme(this);
    auto *panel = new QWidget;
    auto *column = new QVBoxLayout(panel);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    m_messageNote = new TextLabel(QString(), TextStyle::Body);
    m_messageNote->setWordWrap(true);
    m_message = new QPlainTextEdit;
    m_message->setReadOnly(true);
    m_message->setTabChangesFocus(true);
    m_message->setAccessibleName(tr("The order as a message"));
    m_message->setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    auto *buttons = new QHBoxLayout;
    buttons->setSpacing(look.space(2));
    auto *copy = new QPushButton(icon(QStringLiteral("note")), tr("Copy"));
    copy->setAccessibleName(tr("Copy the message"));
    auto *close = new QPushButton(tr("Close"));
    close->setProperty("role", "quiet");
    close->setAccessibleName(tr("Close the message"));
    buttons->addWidget(copy);
    buttons->addWidget(close);
    buttons->addStretch(1);
    column->addWidget(m_messageNote);
    column->addWidget(m_message);
    column->addLayout(buttons);
    connect(copy, &QPushButton::clicked, this, [this] {
        QGuiApplication::clipboard()->setText(message());
        m_context.say(
            tr("Copied. Paste it into a message to %1.")
                .arg(m_context.books()
                         .suppliers.value(m_context.books().orders.value(m_order).supplier)
                         .name));
    });
    connect(close, &QPushButton::clicked, this, [this] {
        openPanel(Panel::None);
        m_read->setFocus(Qt::OtherFocusReason);
    });
    return panel;
}

QWidget *OrderRow::buildPromise()
{
    const Theme &look = theme(this);
    auto *panel = new QWidget;
    auto *row = new QHBoxLayout(panel);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(2));
    m_promise = new FieldSet(m_context, TableId::WoodOrder, this);
    FieldRow *day = m_promise->add(QStringLiteral("promised"), tr("The day they promised"));
    day->setFixedWidth(look.px(280));
    auto *save = new QPushButton(tr("Note the promise"));
    save->setAccessibleName(tr("Note the day promised"));
    save->setEnabled(!m_context.readOnly());
    auto *close = new QPushButton(tr("Close"));
    close->setProperty("role", "quiet");
    close->setAccessibleName(tr("Close without noting a promise"));
    row->addWidget(day, 0, Qt::AlignTop);
    // On a line with the field, which has its label above it.
    auto *buttons = new QVBoxLayout;
    buttons->addSpacing(QFontMetrics(look.font(TextStyle::Label)).height() + look.px(5));
    auto *side = new QHBoxLayout;
    side->setSpacing(look.space(2));
    side->addWidget(save);
    side->addWidget(close);
    buttons->addLayout(side);
    buttons->addStretch(1);
    row->addLayout(buttons);
    row->addStretch(1);
    connect(save, &QPushButton::clicked, this, &OrderRow::savePromise);
    connect(close, &QPushButton::clicked, this, [this] {
        openPanel(Panel::None);
        m_promised->setFocus(Qt::OtherFocusReason);
    });
    return panel;
}

void OrderRow::setHairline(bool shown)
{
    m_hairline = shown;
    update();
}

QString OrderRow::message() const
{
    return m_message->toPlainText();
}

QString OrderRow::standing() const
{
    return m_standing->text();
}

void OrderRow::refresh()
{
    const domain::Books &books = m_context.books();
    const auto found = books.orders.constFind(m_order);
    if (found == books.orders.constEnd())
        return;
    const WoodOrder &order = *found;
    const domain::Wording wording = domain::wordingOf(books);
    m_what->setText(tr("%1 of %2")
                        .arg(domain::orderAmountWords(books, order, wording),
                             books.species.value(order.species).name.toLower()));
    QStringList standing{books.suppliers.value(order.supplier).name,
                         stateWords(books, order, wording)};
    if (order.price)
        standing << domain::moneyWords(order.price->toDouble(), wording);
    standing.removeAll(QString());
    m_standing->setText(standing.join(QStringLiteral(" · ")));
    const auto late = domain::lateness(books, order, todayIn(m_context), wording);
    m_late->setVisible(late.has_value());
    if (late)
        m_late->setText(
            QString(late->asked.left(1).toUpper() + late->asked.mid(1) + QLatin1Char('.')));
    const Role role = late ? Role::Act : Role::Info;
    const QString word = late ? tr("%1 late").arg(domain::daysWords(late->days))
                         : order.state == OrderState::Draft    ? tr("Draft")
                         : order.state == OrderState::Promised ? tr("Promised")
                                                               : tr("Sent");
    m_pill->setStatus(role, word);
    m_message->setPlainText(domain::orderMessage(books, order, wording));
    const int lines = static_cast<int>(m_message->toPlainText().count(QLatin1Char('\n'))) + 1;
    m_message->setFixedHeight(m_message->fontMetrics().lineSpacing() * (lines + 1) +
                              theme(this).space(4));
    m_messageNote->setText(
        order.state == OrderState::Draft
            ? tr("The message as it will be. Nothing is marked as sent yet.")
            : tr("Marked as sent on %1. The program sends nothing itself: copy the message and "
                 "paste it where you write to them.")
                  .arg(domain::dayWithWeekday(order.ordered, wording)));
    showButtons(order, late.has_value(), late && late->askedToday);
    setAccessibleName(tr("%1. %2. %3").arg(m_what->text(), m_standing->text(), word));
}

void OrderRow::showButtons(const WoodOrder &order, bool late, bool askedToday)
{
    const bool draft = order.state == OrderState::Draft;
    m_send->setVisible(draft);
    m_came->setVisible(domain::mayFollow(order.state, OrderStep::Receive));
    m_promised->setVisible(domain::mayFollow(order.state, OrderStep::Promise));
    m_promised->setText(order.state == OrderState::Promised ? tr("Other day…")
                                                            : tr("Promised for…"));
    m_asked->setVisible(late);
    m_asked->setEnabled(!askedToday && !m_context.readOnly());
    m_cancel->setVisible(domain::mayFollow(order.state, OrderStep::Cancel));
    if (!domain::mayFollow(order.state, OrderStep::Promise) && m_panel == Panel::Promise)
        openPanel(Panel::None);
}

void OrderRow::openPanel(Panel panel)
{
    if (panel == Panel::Promise && m_panel != Panel::Promise) {
        domain::Row row = domain::toRow(m_context.books().orders.value(m_order));
        if (!m_context.books().orders.value(m_order).promised.isValid())
            domain::setValue(row, QStringLiteral("promised"),
                             todayIn(m_context).addDays(1).toString(Qt::ISODate));
        m_promise->show(row);
    }
    m_panel = panel;
    m_messagePanel->setVisible(panel == Panel::Message);
    m_promisePanel->setVisible(panel == Panel::Promise);
    if (panel == Panel::Message)
        m_message->setFocus(Qt::OtherFocusReason);
    if (panel == Panel::Promise)
        m_promise->editor(QStringLiteral("promised"))->inner()->setFocus(Qt::OtherFocusReason);
}

bool OrderRow::step(OrderStep wanted, const QString &said, QDate promised)
{
    const auto done = m_context.verbs.stepOrder(m_order, wanted, promised);
    if (!done) {
        const domain::Problems others = m_promise->showProblems(done.problems());
        if (!others.isEmpty())
            m_context.refuse(others);
        return false;
    }
    m_context.say(said);
    return true;
}

void OrderRow::send()
{
    if (step(OrderStep::Send, tr("Marked as sent today. Copy the message; Undo takes it back.")))
        openPanel(Panel::Message);
}

void OrderRow::savePromise()
{
    domain::Row row = domain::toRow(m_context.books().orders.value(m_order));
    const domain::Problems unread = m_promise->readInto(row);
    if (!m_promise->showProblems(unread).isEmpty() || !unread.isEmpty())
        return;
    const QDate day = domain::fromRow<WoodOrder>(row).promised;
    if (step(OrderStep::Promise, tr("The promise is noted. Undo takes it back."), day)) {
        openPanel(Panel::None);
        m_promised->setFocus(Qt::OtherFocusReason);
    }
}

void OrderRow::paintEvent(QPaintEvent *)
{
    if (!m_hairline)
        return;
    const Theme &look = theme(this);
    QPainter painter(this);
    painter.fillRect(QRect(0, 0, width(), 1), look.color(Role::Hairline));
}

} // namespace rickyard::views
