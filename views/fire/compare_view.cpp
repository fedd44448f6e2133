#include "views/fire/compare_view.h"

#include "models/items/wording.h"
#include "views/fire/compare_grid.h"
#include "views/fire/cook_timeline.h"
#include "views/fire/fire_words.h"
#include "views/fire/like_finder.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/field_row.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QPushButton>
#include <QScrollArea>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

CompareView::CompareView(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context)
{
    build();
    connect(&context.answers, &workspace::AnswersService::updated, this, [this] {
        m_stale = true;
        if (isVisible())
            refresh();
    });
}

QWidget *CompareView::buildChoice()
{
    const Theme &look = theme(this);
    auto *row = new QWidget(this);
    auto *line = new QHBoxLayout(row);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(look.space(4));
    m_first = new QComboBox(row);
    m_second = new QComboBox(row);
    for (QComboBox *box : {m_first, m_second}) {
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(22);
    }
    line->addWidget(new FieldRow(tr("First cook"), m_first, row), 1);
    auto *swap = new QPushButton(tr("Swap"), row);
    swap->setProperty("role", "quiet");
    swap->setAccessibleName(tr("Swap the two cooks"));
    connect(swap, &QPushButton::clicked, this, [this] { compare(second(), first()); });
    line->addWidget(new FieldRow(QStringLiteral(" "), swap, row));
    line->addWidget(new FieldRow(tr("Second cook"), m_second, row), 1);
    connect(m_first, &QComboBox::currentIndexChanged, this, &CompareView::firstChanged);
    connect(m_second, &QComboBox::currentIndexChanged, this, &CompareView::refresh);
    return row;
}

QWidget *CompareView::buildTimelines()
{
    auto *card = new Card(tr("Hour by hour"), this);
    m_aboveName = new TextLabel(QString(), TextStyle::Label, Role::InkMuted, card);
    m_belowName = new TextLabel(QString(), TextStyle::Label, Role::InkMuted, card);
    m_above = new CookTimeline(card);
    m_below = new CookTimeline(card);
    m_above->setSmall(false);
    m_below->setSmall(false);
    card->body()->addWidget(m_aboveName);
    card->body()->addWidget(m_above);
    card->body()->addWidget(m_belowName);
    card->body()->addWidget(m_below);
    return card;
}

void CompareView::build()
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    m_stack = new QStackedWidget(this);
    outer->addWidget(m_stack);
    m_stack->addWidget(new EmptyState(QStringLiteral("fire"), tr("Two cooks are needed"),
                                      tr("When there are two in the log, they stand here side by "
                                         "side: hours, weather, food, wood and how the fire was "
                                         "kept."),
                                      m_stack));
    auto *content = new QWidget;
    auto *column = new QVBoxLayout(content);
    column->setContentsMargins(0, 0, look.space(2), 0);
    column->setSpacing(look.space(4));
    column->addWidget(buildChoice());
    m_sentence = new SentenceLabel(content);
    m_sentence->setStyles(TextStyle::Heading, TextStyle::Title);
    column->addWidget(m_sentence);
    auto *find = new QPushButton(tr("Which cook was most like the first?"), content);
    find->setProperty("role", "quiet");
    find->setCheckable(true);
    find->setAccessibleName(tr("Show the cooks most like the first"));
    column->addWidget(find, 0, Qt::AlignLeft);
    auto *like = new Card(tr("Most like"), content);
    m_finder = new LikeFinder(m_context, like);
    like->body()->addWidget(m_finder);
    like->hide();
    connect(find, &QPushButton::toggled, like, &QWidget::setVisible);
    column->addWidget(like);
    auto *figures = new Card(tr("Side by side"), content);
    m_grid = new CompareGrid(figures);
    figures->body()->addWidget(m_grid);
    column->addWidget(figures);
    column->addWidget(buildTimelines());
    column->addStretch(1);
    connect(m_finder, &LikeFinder::chosen, this, [this](qint64 cook) { choose(m_second, cook); });
    auto *scroll = new QScrollArea(m_stack);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(content);
    scroll->viewport()->setAutoFillBackground(false);
    content->setAutoFillBackground(false);
    m_stack->addWidget(scroll);
}

RecordId CompareView::first() const
{
    return m_first->currentData().toLongLong();
}

RecordId CompareView::second() const
{
    return m_second->currentData().toLongLong();
}

QString CompareView::sentence() const
{
    return m_sentence->plainText();
}

void CompareView::choose(QComboBox *box, RecordId cook)
{
    const int at = box->findData(QVariant::fromValue<qint64>(cook));
    if (at >= 0)
        box->setCurrentIndex(at);
}

// Newest first; what was chosen stays so.
void CompareView::fillChoices()
{
    const Books &books = m_context.books();
    const FireWords words(books);
    QVector<Cook> cooks = books.cooks.values();
    std::stable_sort(cooks.begin(), cooks.end(),
                     [](const Cook &a, const Cook &b) { return a.lit > b.lit; });
    for (QComboBox *box : {m_first, m_second}) {
        const QVariant before = box->currentData();
        const QSignalBlocker quiet(box);
        box->clear();
        for (const Cook &cook : std::as_const(cooks))
            box->addItem(
                QStringLiteral("%1, %2, %3")
                    .arg(cookTitle(books, cook), books.pits.value(cook.pit).name,
                         items::dayText(items::toLocal(books, cook.lit).date(), words.locale())),
                QVariant::fromValue<qint64>(cook.id));
        box->setCurrentIndex(before.isValid() ? box->findData(before) : -1);
    }
}

void CompareView::compare(RecordId firstId, RecordId secondId)
{
    fillChoices();
    const Books &books = m_context.books();
    if (!books.cooks.contains(firstId)) {
        firstId = 0;
        Instant latest;
        for (const Cook &cook : books.cooks)
            if (cook.fireOut && (firstId == 0 || cook.lit > latest)) {
                firstId = cook.id;
                latest = cook.lit;
            }
    }
    {
        const QSignalBlocker quietFirst(m_first);
        const QSignalBlocker quietSecond(m_second);
        choose(m_first, firstId);
        m_second->setCurrentIndex(-1);
        choose(m_second, secondId == firstId ? 0 : secondId);
    }
    firstChanged();
}

void CompareView::firstChanged()
{
    m_finder->setCook(first());
    if ((second() == 0 || second() == first()) && !m_finder->found().isEmpty()) {
        const QSignalBlocker quiet(m_second);
        choose(m_second, m_finder->found().first().cook);
    }
    refresh();
}

void CompareView::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (first() == 0)
        compare(0);
    else if (m_stale)
        refresh();
}

void CompareView::refresh()
{
    if (!m_context.answers.ready())
        return;
    const Books &books = m_context.books();
    m_stack->setCurrentIndex(books.cooks.size() < 2 ? 0 : 1);
    if (m_stale) {
        m_stale = false;
        fillChoices();
        m_finder->setCook(first());
    }
    const bool both = books.cooks.contains(first()) && books.cooks.contains(second());
    m_grid->setVisible(both);
    if (!both) {
        m_sentence->setParts({{tr("Choose two cooks.")}});
    } else {
        const QVector<CookFuel> &cooks = m_context.answers.answers().fuel.cooks;
        const Instant now = m_context.verbs.now();
        const ComparedCook a = comparedCook(books, cooks, first(), now);
        const ComparedCook b = comparedCook(books, cooks, second(), now);
        m_sentence->setParts(compareSentence(books, a, b));
        m_grid->showRows(m_first->currentText(), m_second->currentText(), compareRows(books, a, b));
    }
    showTimelines();
}

void CompareView::showTimelines()
{
    const Books &books = m_context.books();
    const Instant now = m_context.verbs.now();
    // One scale of hours, so that what stands above each other happened at the same hour.
    double longest = 0;
    for (const RecordId id : {first(), second()}) {
        const Cook cook = books.cooks.value(id);
        longest = std::max(longest, (cook.fireOut.value_or(now) - cook.lit).toDouble());
    }
    m_above->setCook(books, first(), now, longest);
    m_below->setCook(books, second(), now, longest);
    m_aboveName->setText(m_first->currentText());
    m_belowName->setText(m_second->currentText());
}

} // namespace rickyard::views
