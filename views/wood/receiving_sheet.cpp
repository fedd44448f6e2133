#include "views/wood/receiving_sheet.h"

#include "models/domain/answers/answers.h"
#include "models/domain/records/rules.h"
#include "models/domain/wood/delivery.h"
#include "models/domain/wood/offers.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/column_scroll.h"
#include "views/widgets/field_row.h"
#include "views/widgets/inline_question.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/unit_line_edit.h"
#include "views/wood/delivery_verdict.h"
#include "views/wood/meter_fields.h"
#include "views/wood/piece_chips.h"
#include "views/wood/receiving_groups.h"
#include "views/wood/stack_fields.h"

#include <QBoxLayout>
#include <QCheckBox>
#include <QPushButton>
#include <QShortcut>

namespace rickyard::views {

using domain::Lot;
using domain::Measure;
using domain::Problem;
using domain::Problems;
using domain::TableId;

namespace {

// The lot while it is only on the sheet: no record has a number below one.
constexpr domain::RecordId kProvisional = -1;

} // namespace

ReceivingSheet::ReceivingSheet(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context), m_fields(new FieldSet(context, TableId::Lot, this)),
      m_base(domain::emptyRow(TableId::Lot))
{
    build();
    onTheme(this, [this] { arrange(); });
    m_soon.setSingleShot(true);
    m_soon.setInterval(0);
    connect(&m_soon, &QTimer::timeout, this, &ReceivingSheet::refresh);
    const auto soon = [this] { m_soon.start(); };
    connect(m_fields, &FieldSet::edited, this, &ReceivingSheet::heed);
    connect(m_came, &CameGroup::edited, this, soon);
    connect(m_sample, &SampleGroup::edited, this, soon);
    connect(m_paid, &PaidGroup::orderChosen, this, &ReceivingSheet::takeOrder);
    connect(m_sample, &SampleGroup::escaped, this, &ReceivingSheet::cancel);
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this,
            &ReceivingSheet::refreshChoices);
    m_sample->meter().setBooks([this] { return provisional(); });
    auto *leave = new QShortcut(QKeySequence(Qt::Key_Escape), this);
    leave->setContext(Qt::WidgetWithChildrenShortcut);
    connect(leave, &QShortcut::activated, this, &ReceivingSheet::cancel);
    auto *quickSave = new QShortcut(QKeySequence::Save, this);
    quickSave->setContext(Qt::WidgetWithChildrenShortcut);
    connect(quickSave, &QShortcut::activated, this, &ReceivingSheet::save);
}

void ReceivingSheet::build()
{
    const Theme &look = theme(this);
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_columns->setContentsMargins(0, 0, 0, 0);
    m_columns->setSpacing(look.space(4));
    m_scroll = new ColumnScroll;
    auto *groups = new QWidget;
    auto *column = new QVBoxLayout(groups);
    column->setContentsMargins(0, 0, look.space(2), 0);
    column->setSpacing(look.space(4));
    m_paid = new PaidGroup(m_context, *m_fields);
    m_came = new CameGroup(m_context, *m_fields);
    m_sample = new SampleGroup(m_context, *m_fields);
    m_keep = new KeepGroup(*m_fields);
    for (QWidget *group : {static_cast<QWidget *>(m_paid), static_cast<QWidget *>(m_came),
                           static_cast<QWidget *>(m_sample), static_cast<QWidget *>(m_keep)})
        column->addWidget(group);
    column->addStretch(1);
    m_scroll->setWidget(groups);
    m_columns->addWidget(m_scroll, 1);
    m_side = buildVerdict();
    m_columns->addWidget(m_side);
}

QWidget *ReceivingSheet::buildVerdict()
{
    const Theme &look = theme(this);
    auto *card = new Card;
    auto *scroll = new ColumnScroll;
    auto *inner = new QWidget;
    auto *column = new QVBoxLayout(inner);
    column->setContentsMargins(0, 0, look.space(1), 0);
    m_verdict = new DeliveryVerdict;
    column->addWidget(m_verdict);
    column->addStretch(1);
    scroll->setWidget(inner);
    // The card's own surface shows through.
    inner->setAutoFillBackground(false);
    scroll->viewport()->setAutoFillBackground(false);
    card->body()->setSpacing(look.space(3));
    card->body()->addWidget(scroll, 1);
    m_notice = new NoticeBar;
    card->body()->addWidget(m_notice);
    m_question = new InlineQuestion(tr("Throw it away"), tr("Go on"));
    card->body()->addWidget(m_question);
    auto *buttons = new QHBoxLayout;
    buttons->setSpacing(look.space(2));
    m_save = new QPushButton(tr("Receive it"));
    m_save->setProperty("role", "primary");
    m_save->setAccessibleName(tr("Receive this delivery"));
    auto *cancelButton = new QPushButton(tr("Cancel"));
    cancelButton->setProperty("role", "quiet");
    cancelButton->setAccessibleName(tr("Leave without receiving"));
    buttons->addWidget(m_save, 1);
    buttons->addWidget(cancelButton);
    card->body()->addLayout(buttons);
    connect(m_save, &QPushButton::clicked, this, &ReceivingSheet::save);
    connect(cancelButton, &QPushButton::clicked, this, &ReceivingSheet::cancel);
    connect(m_question, &InlineQuestion::wentOn, this, &ReceivingSheet::closed);
    connect(m_question, &InlineQuestion::wentBack, this,
            [this] { m_save->setFocus(Qt::OtherFocusReason); });
    return card;
}

void ReceivingSheet::start(const domain::Row &defaults)
{
    m_base = defaults;
    m_base.id = 0;
    m_givenName.clear();
    m_fields->show(m_base);
    auto begun = domain::fromRow<Lot>(m_base);
    m_paid->start(begun);
    m_came->start(begun);
    m_sample->start(kProvisional);
    m_notice->dismiss();
    m_question->dismiss();
    m_save->setEnabled(!m_context.readOnly());
    m_scroll->ensureVisible(0, 0);
    nameIt();
    refresh();
    m_begun = domain::toRow(lot());
    m_fields->editor(QStringLiteral("supplier"))->inner()->setFocus(Qt::OtherFocusReason);
}

Lot ReceivingSheet::lot(Problems *problems) const
{
    domain::Row row = m_base;
    const Problems unread = m_fields->readInto(row);
    if (problems != nullptr)
        *problems = unread;
    auto lot = domain::fromRow<Lot>(row);
    lot.id = kProvisional;
    lot.order = m_paid->order();
    // Only the measures of the chosen way are kept; the others stay on the sheet.
    lot.stacks.clear();
    if (lot.measuredBy == Measure::Stack) {
        lot.stacks = m_came->stacks().stacks();
        if (!lot.stacks.isEmpty())
            keepTyped(lot.typed, QStringLiteral("stacks"), m_came->stacks().asTyped());
    }
    if (lot.measuredBy != Measure::Loose)
        lot.looseVolume.reset();
    if (lot.measuredBy != Measure::Weighed)
        lot.weight.reset();
    if (lot.paidUnit != domain::SellUnit::Bundle)
        lot.bundleVolume.reset();
    lot.hold = m_came->mould().isChecked();
    lot.holdReason = lot.hold ? tr("Mould seen") : QString();
    m_sample->weighInto(lot);
    return lot;
}

std::optional<domain::MoistureReading> ReceivingSheet::reading() const
{
    if (m_sample->meter().pieces().isEmpty())
        return std::nullopt;
    return m_sample->meter().reading(lot().received);
}

domain::Books ReceivingSheet::provisional() const
{
    domain::Books books = m_context.books();
    books.lots.insert(kProvisional, lot());
    return books;
}

void ReceivingSheet::heed(const QString &key)
{
    if (key == QStringLiteral("supplier"))
        takeSupplier();
    if (key == QStringLiteral("species") || key == QStringLiteral("received"))
        nameIt();
    m_soon.start();
}

void ReceivingSheet::refresh()
{
    const Lot now = lot();
    m_paid->refresh(now);
    m_came->refresh(now);
    m_sample->meter().refresh();
    domain::Books books = provisional();
    if (auto read = reading()) {
        read->id = kProvisional;
        books.readings.insert(kProvisional, *read);
    }
    domain::DeliveryCheck check =
        domain::checkDelivery(books, now, domain::wordingOf(books),
                              domain::typicalCookHeat(m_context.answers.answers().fuel.cooks));
    const QString refusal = refusalOf(books.species.value(now.species));
    if (!refusal.isEmpty()) {
        check.headline.standing = domain::Standing::Act;
        check.headline.sentence = {{QString(), false}, {refusal, true}};
    }
    m_verdict->show(check, domain::wordingOf(books));
}

bool ReceivingSheet::dirty() const
{
    Problems unread;
    domain::Row row = domain::toRow(lot(&unread));
    return !unread.isEmpty() || !m_sample->weights().isEmpty() || !m_sample->meter().isEmpty() ||
           !m_came->stacks().isEmpty() || row != m_begun;
}

void ReceivingSheet::cancel()
{
    if (m_question->isVisible()) // a second Escape takes the first one back
        m_question->dismiss();
    else if (dirty())
        m_question->ask(tr("What was typed on this sheet is not kept."));
    else
        Q_EMIT closed();
}

// What stands in the way before the books are asked.
Problems ReceivingSheet::slips() const
{
    Problems problems;
    const Lot now = lot(&problems);
    QString stack;
    (void)m_came->stacks().stacks(&stack);
    if (now.measuredBy == Measure::Stack && !stack.isEmpty())
        problems.append({QStringLiteral("stacks"), stack});
    const QString refusal = refusalOf(m_context.books().species.value(now.species));
    if (!refusal.isEmpty())
        problems.append({QStringLiteral("species"), refusal});
    for (const Problem &other : domain::checkFields(m_context.books(), domain::toRow(now))) {
        bool said = false;
        for (const Problem &problem : std::as_const(problems))
            said = said || problem.field == other.field;
        if (!said)
            problems.append(other);
    }
    return problems;
}

bool ReceivingSheet::save()
{
    if (m_context.readOnly())
        return false;
    m_notice->dismiss();
    m_question->dismiss();
    const bool weighed = m_sample->weights().settle();
    const bool read = m_sample->meter().settle();
    const Problems problems = slips();
    if (!problems.isEmpty() || !weighed || !read) {
        showProblems(problems);
        return false;
    }
    Lot wanted = lot();
    wanted.id = 0;
    const auto received = m_context.verbs.receive(wanted, reading());
    if (!received) {
        showProblems(received.problems());
        return false;
    }
    m_context.say(tr("%1 is received. Undo takes it back whole.").arg(wanted.name));
    Q_EMIT saved(received.value());
    return true;
}

void ReceivingSheet::showProblems(const Problems &problems)
{
    QStringList elsewhere;
    const Problems others = m_sample->meter().showProblems(m_fields->showProblems(problems));
    for (const Problem &problem : others) {
        if (problem.field == QStringLiteral("stacks"))
            m_came->stacksRow().setProblem(problem.message);
        else if (problem.field.startsWith(QStringLiteral("split")))
            m_sample->weights().row()->setProblem(problem.message);
        else
            elsewhere << problem.message;
    }
    if (!elsewhere.isEmpty())
        m_notice->showProblem(elsewhere.join(QLatin1Char('\n')));
    // The first field at fault, from above.
    const auto rows = m_scroll->widget()->findChildren<FieldRow *>();
    FieldRow *first = nullptr;
    const auto top = [this](const FieldRow *row) {
        return row->mapTo(m_scroll->widget(), QPoint(0, 0)).y();
    };
    for (FieldRow *row : rows)
        if (row->hasProblem() && row->isVisible() && (first == nullptr || top(row) < top(first)))
            first = row;
    if (first == nullptr)
        return;
    QWidget *target = first->editor();
    if (const auto *editor = qobject_cast<FieldEditor *>(target))
        target = editor->inner();
    else if (target == &m_came->stacks())
        target = m_came->stacks().edits().first();
    target->setFocus(Qt::OtherFocusReason);
    m_scroll->ensureWidgetVisible(first);
}

// Side by side where there is room; the verdict below where there is not.
void ReceivingSheet::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    arrange();
}

void ReceivingSheet::arrange()
{
    const Theme &look = theme(this);
    const bool narrow = width() < look.px(680);
    m_columns->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    if (narrow) {
        m_side->setFixedHeight(qMin(height() / 2, look.px(320)));
        m_side->setMinimumWidth(0);
        m_side->setMaximumWidth(QWIDGETSIZE_MAX);
    } else {
        m_side->setMinimumHeight(0);
        m_side->setMaximumHeight(QWIDGETSIZE_MAX);
        m_side->setFixedWidth(qBound(look.px(260), width() * 36 / 100, look.px(400)));
    }
    const int groups = narrow ? width() : width() - m_side->width();
    m_sample->setNarrow(groups < look.px(580));
}

} // namespace rickyard::views
