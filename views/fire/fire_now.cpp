#include "views/fire/fire_now.h"

#include "views/fire/feed_notice.h"
#include "views/fire/feed_pad.h"
#include "views/fire/fire_words.h"
#include "views/fire/light_panel.h"
#include "views/fire/run_facts.h"
#include "views/fire/run_panel.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/notice_bar.h"

#include <QButtonGroup>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

FireNow::FireNow(PageContext &context, QWidget *parent) : QWidget(parent), m_context(context)
{
    build();
    rebuildRow();
    refresh();
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                for (const TableId table :
                     {TableId::Cook, TableId::Feed, TableId::CookTemperature, TableId::CookNote,
                      TableId::Lot, TableId::Movement, TableId::MoistureReading, TableId::Pit,
                      TableId::PlannedCook, TableId::Trace, TableId::Yard})
                    if (changes.touches(table)) {
                        refresh();
                        return;
                    }
            });
    m_feedNotice = new FeedNotice(context, this);
    m_second.setInterval(1000);
    connect(&m_second, &QTimer::timeout, this, [this] {
        m_feedNotice->look(); // on whatever page one is
        if (RunPanel *run = currentRun(); run != nullptr && isVisible())
            run->tick();
    });
    m_second.start();
}

void FireNow::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    m_ash = new CautionNote(tr("Ash hides live coals for days: a metal can with a lid, outdoors, "
                               "away from walls and vehicles. Close the dampers and look again."),
                            this);
    m_ash->hide();
    m_row = new QWidget(this);
    m_rowFlow = new FlowLayout(m_row);
    m_choices = new QButtonGroup(this);
    connect(m_choices, &QButtonGroup::idClicked, this, &FireNow::showIndex);
    column->addWidget(m_row);
    m_stack = new QStackedWidget(this);
    column->addWidget(m_stack, 1);
    // Below everything: what is said moves nothing, and is in sight wherever one has scrolled to.
    column->addWidget(m_ash);
    m_notice = new NoticeBar(this);
    connect(m_notice, &NoticeBar::dismissed, m_ash, &QWidget::hide);
    column->addWidget(m_notice);
    m_empty = new EmptyState(QStringLiteral("fire"), tr("No pit to light yet"),
                             tr("Add your first pit with its measures. Then this page lights it, "
                                "counts every split and says when the next one is due."),
                             m_stack);
    m_empty->setAction(tr("Add a pit"));
    m_empty->actionButton()->setAccessibleName(tr("Add a pit"));
    connect(m_empty, &EmptyState::triggered, this, [this] { m_context.open({TableId::Pit, 0}); });
    m_stack->addWidget(m_empty);
    m_light = new LightPanel(m_context, m_stack);
    m_lightArea = scrolled(m_light);
    m_stack->addWidget(m_lightArea);
    connect(m_light, &LightPanel::lit, this, [this](qint64 cook, qint64 lot) {
        showCook(cook);
        if (RunPanel *run = currentRun()) {
            run->pad().chooseLot(lot);
            run->focusFeed();
        }
        m_context.say(
            tr("%1 is lit.")
                .arg(m_context.books().pits.value(m_context.books().cooks.value(cook).pit).name));
    });
    auto *next = new QShortcut(QKeySequence(Qt::Key_F2), this);
    connect(next, &QShortcut::activated, this, &FireNow::nextRun);
}

QScrollArea *FireNow::scrolled(QWidget *content)
{
    auto *area = new QScrollArea(m_stack);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidget(content);
    // The ground shows through, by day and by night.
    area->viewport()->setAutoFillBackground(false);
    content->setAutoFillBackground(false);
    return area;
}

void FireNow::refresh()
{
    const Books &books = m_context.books();
    const QVector<Cook> alight = burningCooks(books);
    QVector<RunPanel *> kept;
    const RecordId current = currentRun() != nullptr ? currentRun()->cook() : 0;
    for (const Cook &cook : alight) {
        RunPanel *panel = nullptr;
        for (RunPanel *run : std::as_const(m_runs))
            if (run->cook() == cook.id)
                panel = run;
        if (panel == nullptr) {
            panel = new RunPanel(m_context, cook.id, m_notice);
            m_stack->addWidget(scrolled(panel));
            connect(panel, &RunPanel::finished, this, &FireNow::afterFinish);
        } else {
            panel->refresh();
        }
        kept << panel;
    }
    for (RunPanel *run : std::as_const(m_runs))
        if (!kept.contains(run)) {
            // Its own button may be what brought us here.
            QWidget *area = run->parentWidget()->parentWidget();
            m_stack->removeWidget(area);
            area->deleteLater();
        }
    const bool changed = kept != m_runs;
    m_runs = kept;
    m_light->refresh();
    if (!changed) {
        // The first pit was added, or the last one went.
        if (currentRun() == nullptr)
            showIndex(static_cast<int>(m_runs.size()));
        return;
    }
    rebuildRow();
    int index = 0;
    for (int i = 0; i < m_runs.size(); ++i)
        if (m_runs.at(i)->cook() == current)
            index = i;
    showIndex(index);
    Q_EMIT burningChanged(burning());
}

void FireNow::rebuildRow()
{
    const auto old = m_choices->buttons();
    for (QAbstractButton *button : old) {
        m_choices->removeButton(button);
        m_rowFlow->removeWidget(button);
        button->hide();
        button->deleteLater();
    }
    const auto add = [this](const QString &text, const QString &name, int id) {
        auto *button = new QPushButton(m_row);
        QString label = text;
        button->setText(label.replace(QLatin1Char('&'), QStringLiteral("&&")));
        button->setAccessibleName(name);
        button->setCheckable(true);
        button->setFont(theme(this).font(TextStyle::Heading));
        button->setMinimumHeight(theme(this).px(48));
        m_choices->addButton(button, id);
        m_rowFlow->addWidget(button);
        button->show();
    };
    const Books &books = m_context.books();
    for (int i = 0; i < m_runs.size(); ++i) {
        const QString pit = books.pits.value(books.cooks.value(m_runs.at(i)->cook()).pit).name;
        add(pit, tr("Show the fire of %1").arg(pit), i);
    }
    add(tr("Light another pit"), tr("Light another pit"), static_cast<int>(m_runs.size()));
    if (m_runs.size() > 1)
        m_row->setToolTip(tr("F2 shows the next fire"));
    m_row->setVisible(!m_runs.isEmpty());
}

void FireNow::showIndex(int index)
{
    if (QAbstractButton *button = m_choices->button(index))
        button->setChecked(true);
    if (index < m_runs.size()) {
        RunPanel *run = m_runs.at(index);
        m_stack->setCurrentWidget(run->parentWidget()->parentWidget());
        run->tick();
        if (isVisible())
            run->focusFeed();
        return;
    }
    bool anyPit = false;
    for (const Pit &pit : m_context.books().pits)
        anyPit = anyPit || !pit.retired;
    m_stack->setCurrentWidget(anyPit ? static_cast<QWidget *>(m_lightArea) : m_empty);
}

void FireNow::nextRun()
{
    if (m_runs.isEmpty())
        return;
    const auto at = m_runs.indexOf(currentRun());
    showIndex(static_cast<int>((at + 1) % m_runs.size()));
}

RunPanel *FireNow::currentRun() const
{
    for (RunPanel *run : m_runs)
        if (m_stack->currentWidget() == run->parentWidget()->parentWidget())
            return run;
    return nullptr;
}

bool FireNow::showCook(RecordId cook)
{
    for (int i = 0; i < m_runs.size(); ++i)
        if (m_runs.at(i)->cook() == cook) {
            showIndex(i);
            return true;
        }
    return false;
}

void FireNow::showLighting()
{
    showIndex(static_cast<int>(m_runs.size()));
    m_light->focusFirst();
}

void FireNow::afterFinish(RecordId id)
{
    const Books &books = m_context.books();
    const FireWords words(books);
    const Cook cook = books.cooks.value(id);
    if (!cook.fireOut)
        return;
    const RunFacts facts = runFacts(books, cook, *cook.fireOut);
    const int step = m_context.verbs.undoStack().index();
    m_notice->showGood(tr("%1: fire out at %2 after %3. %4 of wood, %5.")
                           .arg(cookTitle(books, cook), words.clock(*cook.fireOut),
                                FireWords::span(*cook.fireOut - cook.lit),
                                words.mass(facts.asIs).text(), words.heat(facts.heat).text()),
                       {{tr("Undo"),
                         [this, step] {
                             if (m_context.verbs.undoStack().index() != step) {
                                 m_notice->showProblem(
                                     tr("Other changes came after it: take those back first."));
                                 return;
                             }
                             const auto undone = m_context.verbs.undo();
                             if (undone)
                                 m_notice->dismiss();
                             else
                                 m_notice->showProblem(undone.message());
                         }},
                        {tr("Open in the log"), [this, id] {
                             m_context.open({TableId::Cook, id});
                         }}});
    m_ash->show();
}

void FireNow::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    if (RunPanel *run = currentRun()) {
        run->refresh();
        run->focusFeed();
    }
}

} // namespace rickyard::views
