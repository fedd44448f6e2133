#include "views/fire/run_panel.h"

#include "models/domain/fire/hand_over.h"
#include "models/domain/fire/wood_left.h"
#include "models/domain/wood/ledger.h"
#include "views/charts/band_meter.h"
#include "views/charts/chart_view.h"
#include "views/fire/cook_timeline.h"
#include "views/fire/feed_pad.h"
#include "views/fire/fire_words.h"
#include "views/fire/marks_bar.h"
#include "views/fire/recent_feeds.h"
#include "views/fire/temperature_entry.h"
#include "views/reports/paper_view.h"
#include "views/theme/icons.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/numeral.h"
#include "views/widgets/text_label.h"

#include <QGridLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

RunPanel::RunPanel(PageContext &context, RecordId cook, NoticeBar *notice, QWidget *parent)
    : QWidget(parent), m_context(context), m_cook(cook), m_notice(notice)
{
    build();
    follow();
    refresh();
    if (m_facts.lastLot)
        m_pad->chooseLot(*m_facts.lastLot);
}

QWidget *RunPanel::buildStrip()
{
    auto *strip = new QWidget(this);
    auto *flow = new FlowLayout(strip);
    flow->setSpacingSteps(6, 3);
    m_elapsed = new Numeral(strip);
    m_wood = new Numeral(strip);
    m_temperature = new Numeral(strip);
    m_left = new Numeral(strip);
    for (Numeral *numeral : {m_elapsed, m_wood, m_temperature, m_left}) {
        numeral->setMinimumWidth(theme(this).px(150)); // so that the seconds move nothing
        flow->addWidget(numeral);
    }
    return strip;
}

void RunPanel::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    m_title = new TextLabel(QString(), TextStyle::Heading, Role::Ink, this);
    m_title->setWordWrap(true);
    column->addWidget(m_title);
    column->addWidget(buildStrip());
    m_expected = new BandMeter(this);
    m_expected->hide();
    column->addWidget(m_expected);
    m_line = new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this);
    m_line->setWordWrap(true);
    column->addWidget(m_line);

    auto *grid = new QGridLayout;
    grid->setSpacing(look.space(4));
    grid->setColumnStretch(0, 1);
    grid->setColumnStretch(1, 1);
    auto *feed = new Card(tr("Feed"), this);
    m_next = new Numeral(this);
    m_next->setTextStyle(TextStyle::NumeralHuge);
    m_pad = new FeedPad(m_context, m_cook, this);
    feed->body()->addWidget(m_next);
    feed->body()->addWidget(m_pad);
    feed->body()->addStretch(1);
    grid->addWidget(feed, 0, 0);

    auto *course = new Card(tr("Temperature"), this);
    m_entry = new TemperatureEntry(m_context, m_cook, this);
    m_timeline = new CookTimeline(this);
    m_timeline->setSmall(false);
    course->body()->addWidget(m_entry);
    course->body()->addWidget(m_timeline, 1);
    grid->addWidget(course, 0, 1);

    auto *marks = new Card(tr("Times and notes"), this);
    m_marks = new MarksBar(m_context, m_cook, this);
    marks->body()->addWidget(m_marks);
    m_handOver = new QPushButton(icon(QStringLiteral("people")), tr("Hand over …"), this);
    m_handOver->setAccessibleName(tr("Hand over to the next shift"));
    m_handOver->setToolTip(tr("The sheet for the next shift writes itself (H)"));
    m_handOver->setShortcut(QKeySequence(Qt::Key_H));
    connect(m_handOver, &QPushButton::clicked, this, &RunPanel::openHandOver);
    marks->body()->addWidget(m_handOver);
    marks->body()->addStretch(1);
    grid->addWidget(marks, 1, 0);
    auto *recent = new Card(tr("Last feeds"), this);
    m_recent = new RecentFeeds(m_context, m_cook, this);
    recent->body()->addWidget(m_recent);
    recent->body()->addStretch(1);
    grid->addWidget(recent, 1, 1);
    column->addLayout(grid);
    column->addStretch(1);
}

void RunPanel::follow()
{
    connect(m_pad, &FeedPad::fed, this, [this](qint64 id) {
        const Feed feed = m_context.books().feeds.value(id);
        const QString what = feed.pieces == 1 ? tr("1 split") : tr("%1 splits").arg(feed.pieces);
        offerUndo(tr("Fed %1 of %2 at %3.")
                      .arg(what, m_context.books().lots.value(feed.lot).name,
                           FireWords(m_context.books()).clock(feed.time)),
                  {TableId::Feed, id});
    });
    connect(m_pad, &FeedPad::refused, this, &RunPanel::refuse);
    connect(m_pad, &FeedPad::lotChanged, this, &RunPanel::showLeft);
    connect(m_marks, &MarksBar::done, this, &RunPanel::offerUndo);
    connect(m_marks, &MarksBar::refused, this, &RunPanel::refuse);
    connect(m_marks, &MarksBar::finished, this, [this] { Q_EMIT finished(m_cook); });
    connect(m_entry, &TemperatureEntry::done, this, &RunPanel::offerUndo);
    connect(m_recent, &RecentFeeds::removed, this,
            [this](const QString &text) { offerUndo(text, {}); });
    connect(m_recent, &RecentFeeds::refused, this, &RunPanel::refuse);
    connect(&m_context.answers, &workspace::AnswersService::updated, this, &RunPanel::showWood);
}

void RunPanel::refresh()
{
    const Books &books = m_context.books();
    const auto cook = books.cooks.constFind(m_cook);
    if (cook == books.cooks.constEnd())
        return;
    const Instant now = m_context.verbs.now();
    m_facts = runFacts(books, *cook, now);
    m_title->setText(tr("%1: %2").arg(books.pits.value(cook->pit).name, cookTitle(books, *cook)));
    m_pad->refresh();
    m_marks->refresh();
    m_recent->refresh();
    m_timeline->setCook(books, m_cook, now);
    showWood();
    showTemperature();
    showLeft();
    tick();
}

void RunPanel::tick()
{
    const FireWords words(m_context.books());
    const Instant now = m_context.verbs.now();
    const Duration burning = now - m_facts.lit;
    m_elapsed->setValue(FireWords::ticking(burning), FireWords::tickingUnit(burning));
    m_elapsed->setCaption(tr("burning since %1").arg(words.clock(m_facts.lit, now)));
    if (m_facts.lastFeed) {
        const qint64 minutes = (now - *m_facts.lastFeed).base() / 60;
        m_pad->setLine(tr("Last fed %1 min ago").arg(minutes));
    } else {
        m_pad->setLine(tr("Nothing fed yet"));
    }
    if (!m_facts.nextFeed) {
        m_next->setRole(Role::Ink);
        const Duration since = m_facts.lastFeed ? now - *m_facts.lastFeed : Duration();
        m_next->setValue(m_facts.lastFeed ? FireWords::ticking(since) : QString(),
                         m_facts.lastFeed ? FireWords::tickingUnit(since) : QString());
        m_next->setCaption(m_facts.lastFeed
                               ? tr("since the last feed; the next is reckoned after two")
                               : tr("the next feed is reckoned after two"));
        return;
    }
    const Duration left = *m_facts.nextFeed - now;
    const bool late = left < Duration();
    m_next->setRole(late ? Role::Watch : Role::Ink);
    m_next->setValue(FireWords::ticking(late ? -left : left),
                     (late ? tr("%1 late") : tr("%1 to go")).arg(FireWords::tickingUnit(left)));
    m_next->setCaption(tr("next feed at %1, by this cook's pace of %2 min")
                           .arg(words.clock(*m_facts.nextFeed, now))
                           .arg((m_facts.interval->base() + 30) / 60));
}

void RunPanel::showWood()
{
    const FireWords words(m_context.books());
    const Figure mass = words.mass(m_facts.asIs);
    m_wood->setValue(mass.value, mass.unit);
    m_wood->setCaption(
        (m_facts.pieces == 1 ? tr("1 split, %1") : tr("%1 splits, %2").arg(m_facts.pieces))
            .arg(words.heat(m_facts.heat).text()));
    QStringList lines;
    showExpected();
    if (const Duration ahead = aheadOfClock(m_context.books(), m_cook, m_context.verbs.now());
        ahead > Duration::ofBase(120))
        lines << tr("The last entry is %1 min ahead of the clock: the computer's clock was set "
                    "back, or a time was typed wrongly. Check both; new entries carry the clock's "
                    "time.")
                     .arg((ahead.base() + 30) / 60);
    if (m_facts.assumed)
        lines << tr("Some feeds rest on an assumed weight or moisture.");
    m_line->setText(lines.join(QLatin1Char(' ')));
    m_line->setVisible(!lines.isEmpty());
}

// Used against what this pit should have taken by now.
void RunPanel::showExpected()
{
    const FireWords words(m_context.books());
    m_expected->hide();
    // The first half hour is lighting: wood is laid on before the heat is asked for.
    if (m_context.verbs.now() - m_facts.lit < Duration::ofBase(1800))
        return;
    for (const CookFuel &fuel : m_context.answers.answers().fuel.cooks) {
        if (fuel.cook != m_cook || !fuel.expected || !fuel.lower || !fuel.upper)
            continue;
        const bool more = m_facts.heat > *fuel.upper;
        const bool less = m_facts.heat < *fuel.lower;
        m_expected->setValues(m_facts.heat.toDouble(), fuel.lower->toDouble(),
                              fuel.expected->toDouble(), fuel.upper->toDouble(),
                              (more   ? tr("%1 so far, more than to be expected")
                               : less ? tr("%1 so far, less than to be expected")
                                      : tr("%1 so far, as to be expected"))
                                  .arg(words.heat(m_facts.heat).text()),
                              tr("by now %1 (9 in 10: %2)")
                                  .arg(words.heat(*fuel.expected).text(),
                                       withUnit(rangeText(words.heat(*fuel.lower).value,
                                                          words.heat(*fuel.upper).value),
                                                words.heat(*fuel.upper).unit)));
        m_expected->show();
    }
}

void RunPanel::showTemperature()
{
    const Books &books = m_context.books();
    const FireWords words(books);
    const Cook cook = books.cooks.value(m_cook);
    const QString target =
        cook.target ? tr("target %1").arg(words.temperature(*cook.target).text()) : tr("no target");
    if (!m_facts.lastTemperature) {
        m_temperature->setValue(QString(), QString());
        m_temperature->setCaption(tr("no reading yet; %1").arg(target));
        return;
    }
    const Figure figure = words.temperature(m_facts.lastTemperature->temperature);
    m_temperature->setValue(figure.value, figure.unit);
    m_temperature->setCaption(tr("%1 at %2; %3")
                                  .arg(m_facts.lastTemperature->probe,
                                       words.clock(m_facts.lastTemperature->time), target));
}

void RunPanel::showLeft()
{
    const Books &books = m_context.books();
    const FireWords words(books);
    const Instant now = m_context.verbs.now();
    const RecordId lot = m_pad->lot();
    const Cook cook = books.cooks.value(m_cook);
    const auto pace = lot == 0 ? std::nullopt : feedPace(books, cook, now);
    if (!pace) {
        m_left->setRole(Role::Ink);
        m_left->setValue(QString(), QString());
        m_left->setCaption(tr("how long the lot lasts shows after three feeds"));
        return;
    }
    const auto end = expectedEnd(books, cook, now);
    const double error =
        std::hypot(kCountedStockError, splitWeight(books, books.lots.value(lot)).error);
    const WoodLeft left =
        woodLeft(lotStockAt(books, lot, now).netHeat, error, *pace, now,
                 end ? std::optional(end->time) : std::nullopt, end && end->assumed);
    // Beyond two days the figure says nothing about tonight.
    const bool plenty = left.lasts > durationFromHours(48);
    m_left->setValue(plenty ? QStringLiteral("48+") : QString::number(hours(left.lasts), 'f', 1),
                     QStringLiteral("h"));
    QString caption =
        plenty ? tr("this lot lasts at this pace")
               : tr("this lot lasts, until %1 (%2 to %3)")
                     .arg(words.clock(now + left.lasts, now), words.clock(now + left.least, now),
                          words.clock(now + left.most, now));
    const bool doubtful = left.end && left.chanceEnough < 0.9;
    if (doubtful)
        caption +=
            tr("; enough to the end with %1 % chance").arg(std::lround(100 * left.chanceEnough));
    const WoodLeft all = woodLeft(stockAt(books, now).readyHeat, kCountedStockError, *pace, now,
                                  std::nullopt, false);
    caption += all.lasts > durationFromHours(48)
                   ? tr("; all dry wood more than two days")
                   : tr("; all dry wood %1 h").arg(hours(all.lasts), 0, 'f', 0);
    m_left->setCaption(caption);
    m_left->setRole(doubtful ? Role::Watch : Role::Ink);
}

Paper RunPanel::handOverPaper() const
{
    const Books &books = m_context.books();
    const Answers &answers = m_context.answers.answers();
    const HandOver sheet = handOver(books, answers.fuel, answers.upkeep, books.cooks.value(m_cook),
                                    m_pad->lot(), m_context.verbs.now(), wordingOf(books));
    Paper paper;
    paper.title = tr("Hand-over: %1").arg(sheet.title);
    paper.subtitle = books.yard().invented ? tr("Invented data") : QString();
    for (const HandOverSection &section : sheet.sections)
        paper.sections << PaperSection{section.heading, section.lines, false};
    paper.sections << PaperSection{
        tr("Always"),
        {tr("Nobody sleeps near a pit that burns: carbon monoxide has no smell."),
         tr("A grease fire: close the doors and dampers, no water; know where the extinguisher "
            "is."),
         tr("Ash holds live coals for days: metal can with a lid, outdoors, away from walls."),
         tr("Local code and the authority having jurisdiction decide.")},
        false};
    return paper;
}

void RunPanel::openHandOver()
{
    auto *view = new PaperView(handOverPaper(), window());
    view->setAttribute(Qt::WA_DeleteOnClose);
    if (!m_context.readOnly()) {
        QPushButton *taken = view->addAct(tr("Handed over"));
        connect(taken, &QPushButton::clicked, this, [this, view] {
            const auto noted = m_context.verbs.note(m_cook, NoteKind::HandOver, QString());
            view->accept();
            if (!noted)
                refuse(noted.message());
            else
                offerUndo(tr("Handed over at %1.")
                              .arg(FireWords(m_context.books()).clock(m_context.verbs.now())),
                          {TableId::CookNote, noted.value()});
        });
    }
    view->open();
}

void RunPanel::focusFeed()
{
    m_pad->focusFeed();
}

void RunPanel::offerUndo(const QString &text, Link link)
{
    const int step = m_context.verbs.undoStack().index();
    m_notice->showGood(text, {{tr("Undo"), [this, step, link] {
                                   Outcome<Done> undone = Done{};
                                   if (m_context.verbs.undoStack().index() == step)
                                       undone = m_context.verbs.undo();
                                   else if (link.id != 0)
                                       undone = m_context.verbs.remove(link.table, {link.id});
                                   else
                                       undone = Outcome<Done>::failed(tr(
                                           "Other changes came after it: take those back first."));
                                   if (undone)
                                       m_notice->showInfo(tr("Taken back."));
                                   else
                                       refuse(undone.message());
                               }}});
}

void RunPanel::refuse(const QString &message)
{
    m_notice->showProblem(message);
}

} // namespace rickyard::views
