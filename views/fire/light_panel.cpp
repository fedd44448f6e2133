#include "views/fire/light_panel.h"

#include "models/domain/answers/answers.h"
#include "models/domain/answers/wording.h"
#include "models/domain/fire/preheat.h"
#include "models/domain/plan/load_list.h"
#include "views/fire/fire_words.h"
#include "views/fire/lot_picker.h"
#include "views/fire/run_facts.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/field_row.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/tap_button.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"

#include <QButtonGroup>
#include <QCheckBox>
#include <QPushButton>
#include <QTimeEdit>
#include <QTimeZone>

namespace rickyard::views {

using namespace rickyard::domain;

LightPanel::LightPanel(PageContext &context, QWidget *parent) : QWidget(parent), m_context(context)
{
    build();
    showCautions({});
    connect(&context.answers, &workspace::AnswersService::updated, this, [this] {
        showBlocking();
        showPreheat();
    });
    connect(&context.verbs.yard(), &workspace::Workspace::changed, this,
            [this](const workspace::Changes &changes) {
                if (changes.touches(TableId::Weather))
                    m_weather.reset();
            });
    refresh();
}

void LightPanel::refresh()
{
    m_lot->refill();
    fillPits();
    follow();
}

void LightPanel::showEvent(QShowEvent *event)
{
    QWidget::showEvent(event);
    showPreheat();
}

void LightPanel::fillPits()
{
    const Books &books = m_context.books();
    QVector<RecordId> free;
    for (const Pit &pit : books.pits)
        if (!pit.retired)
            free << pit.id;
    const QVector<Cook> burning = burningCooks(books);
    for (const Cook &cook : burning)
        free.removeAll(cook.pit);
    if (free != m_shownPits) {
        qDeleteAll(m_pits->buttons());
        m_shownPits = free;
        for (const RecordId id : free) {
            QString name = books.pits.value(id).name;
            auto *button = new QPushButton(m_pitHolder);
            button->setAccessibleName(tr("Pit %1").arg(name));
            button->setText(name.replace(QLatin1Char('&'), QStringLiteral("&&")));
            button->setCheckable(true);
            button->setFont(theme(this).font(TextStyle::Heading));
            button->setMinimumSize(theme(this).px(136), theme(this).px(72));
            m_pits->addButton(button, static_cast<int>(id));
            m_pitFlow->addWidget(button);
            button->show();
        }
    }
    if (!free.contains(m_pit))
        choosePit(free.value(0));
}

void LightPanel::choosePit(RecordId pit)
{
    m_pit = pit;
    if (QAbstractButton *button = m_pits->button(static_cast<int>(pit)))
        button->setChecked(true);
    const Books &books = m_context.books();
    const auto start = likelyStart(books, pit, m_context.verbs.now());
    m_start->button(static_cast<int>(start))->setChecked(true);
    follow();
    std::optional<Temperature> target = books.pits.value(pit).usualTemperature;
    if (m_planned && m_planned->target)
        target = m_planned->target;
    m_target->setText(target ? FireWords(books).temperature(*target).value : QString());
    m_targetRow->clearProblem();
    m_asPlanned->setChecked(m_planned.has_value());
    showPreheat();
}

void LightPanel::follow()
{
    const Books &books = m_context.books();
    const Instant now = m_context.verbs.now();
    m_planned = plannedNear(books, m_pit, now);
    m_asPlanned->setVisible(m_planned.has_value());
    if (m_planned)
        m_asPlanned->setText(
            plannedWords(books, *m_planned, now).replace(QLatin1Char('&'), QStringLiteral("&&")));
    m_light->setEnabled(m_pit != 0 && !m_context.readOnly());
    m_light->setSubLabel(
        m_pit == 0 ? tr("No pit is free")
                   : tr("%1 at %2").arg(books.pits.value(m_pit).name, FireWords(books).clock(now)));
    showBlocking();
}

void LightPanel::showBlocking()
{
    m_blocking = blockingTasks(m_context.books(), m_context.answers.answers().upkeep, m_pit,
                               m_context.verbs.now(), m_planned ? m_planned->id : RecordId(0));
    QStringList lines;
    for (const Blocking &blocking : std::as_const(m_blocking))
        lines << blocking.text;
    m_stopText->setText(lines.join(QLatin1Char('\n')));
    m_stop->setVisible(!m_blocking.isEmpty());
}

QString LightPanel::preheatText() const
{
    return m_preheat->text();
}

// When the pit would be at temperature if lit now, and when to light to be there by a given time.
void LightPanel::showPreheat()
{
    const Books &books = m_context.books();
    const FireWords words(books);
    const Instant now = m_context.verbs.now();
    const auto typed = parseQuantity(m_target->text().trimmed(), Dimension::Temperature,
                                     words.unit(Dimension::Temperature), words.locale());
    m_preheat->setVisible(m_pit != 0 && typed.has_value());
    m_pull->setVisible(m_pit != 0 && typed.has_value() && m_context.answers.ready());
    m_load->setVisible(m_planned.has_value() && m_context.answers.ready());
    if (m_pit == 0 || !typed || !isVisible())
        return;
    if (!m_weather)
        m_weather.emplace(books);
    auto outside = m_weather->temperatureAt(now);
    if (!outside)
        outside = m_weather->climatology(now, now + durationFromHours(2)).temperature;
    const Preheat p = preheat(
        books, *m_weather, m_pit, static_cast<StartKind>(m_start->checkedId()),
        Temperature::ofBase(typed->base), outside.value_or(temperatureFromCelsius(15)), now);
    showCautions(outside);
    showPull(Temperature::ofBase(typed->base), outside);
    // The next time that the yard's clock shows it.
    const QTimeZone zone = zoneOf(wordingOf(books));
    const QDateTime local = QDateTime::fromSecsSinceEpoch(now.seconds(), zone);
    QDateTime by(local.date(), m_by->time(), zone);
    if (by < local)
        by = QDateTime(local.date().addDays(1), m_by->time(), zone);
    const Instant goal = Instant::ofSeconds(by.toSecsSinceEpoch());
    const Instant light = lightBy(p, goal);
    const QString basis = p.learnedFrom == 0 ? tr("usual for a pit without a record")
                          : p.learnedFrom == 1
                              ? tr("from one start of this pit")
                              : tr("from %1 starts of this pit").arg(p.learnedFrom);
    const QString when = light < now ? tr("Too late to be sure of %1.").arg(words.clock(goal, now))
                                     : tr("Light by %1 to be there at %2, nine times in ten.")
                                           .arg(words.clock(light, now), words.clock(goal, now));
    m_preheat->setText(tr("Lit now it is at temperature about %1 (%2 to %3, %4). %5")
                           .arg(words.clock(now + p.middle, now), words.clock(now + p.early, now),
                                words.clock(now + p.late, now), basis, when));
}

// What always holds, and what the day's weather adds to it.
void LightPanel::showCautions(std::optional<Temperature> outside)
{
    QString text =
        tr("Carbon monoxide kills without a smell: burn outdoors, away from doors and windows. "
           "Never leave the fire alone. Look at the grease drain, and keep an extinguisher within "
           "reach. A lit pit is not towed.");
    const Speed breezy = Speed::ofBase(4470); // 10 mph
    const Temperature hot = temperatureFromFahrenheit(90);
    const FireWords words(m_context.books());
    const auto wind = m_weather ? m_weather->windAt(m_context.verbs.now()) : std::nullopt;
    if (wind && *wind >= breezy)
        text +=
            tr(" Wind of %1 today: sparks fly far, and some places forbid fires in it. Ask "
               "about a burn ban.")
                .arg(formatQuantity(wind->base(), words.unit(Dimension::Speed), words.locale(), 0));
    if (outside && *outside >= hot)
        text += tr(" %1 outside: food that is neither hot nor cold has one hour, not two.")
                    .arg(words.temperature(*outside).text());
    m_caution->setCaution(text);
}

QString LightPanel::pullText() const
{
    return m_pull->text();
}

// What wood to pull: for the plan's hours, else for the mean of this pit's cooks.
void LightPanel::showPull(Temperature target, std::optional<Temperature> outside)
{
    if (!m_context.answers.ready())
        return;
    const Books &books = m_context.books();
    const Answers &answers = m_context.answers.answers();
    const Instant now = m_context.verbs.now();
    PlannedFire fire = middleFire(books, answers.fuel, m_pit);
    if (m_planned)
        fire.length = m_planned->length;
    fire.target = target;
    fire.start = static_cast<StartKind>(m_start->checkedId());
    if (outside)
        fire.outside = *outside;
    if (const auto wind = m_weather->windAt(now))
        fire.wind = wind;
    if (m_planned && m_planned->foodMass)
        fire.food = m_planned->foodMass;
    const auto lists = loadLists(books, answers.fuel, stockAt(books, now), answers.burn, {fire});
    m_pull->setText(tr("%1 For %2 h; 19 such cooks of 20 need no more.")
                        .arg(pullWords(books, lists.first(), wordingOf(books)))
                        .arg(QLocale().toString(hours(fire.length), 'f', 0)));
}

bool LightPanel::typedTarget(std::optional<Temperature> &target)
{
    const QString text = m_target->text().trimmed();
    if (text.isEmpty())
        return true;
    const FireWords words(m_context.books());
    const Unit &unit = words.unit(Dimension::Temperature);
    const auto parsed = parseQuantity(text, Dimension::Temperature, unit, words.locale());
    if (!parsed) {
        m_targetRow->setProblem(tr("“%1” is not a temperature in %2.").arg(text, unit.symbol));
        m_target->setFocus(Qt::OtherFocusReason);
        return false;
    }
    target = Temperature::ofBase(parsed->base);
    return true;
}

Cook LightPanel::cookToLight() const
{
    const Books &books = m_context.books();
    const Instant now = m_context.verbs.now();
    Cook cook;
    cook.pit = m_pit;
    cook.lit = now;
    cook.start = static_cast<StartKind>(m_start->checkedId());
    cook.name =
        QStringLiteral("%1, %2").arg(books.pits.value(m_pit).name, FireWords(books).day(now));
    if (m_planned && m_asPlanned->isChecked()) {
        cook.planned = m_planned->id;
        cook.foods = m_planned->foods;
        cook.foodMass = m_planned->foodMass;
        if (m_planned->event)
            cook.name = books.events.value(*m_planned->event).name;
    }
    return cook;
}

void LightPanel::light()
{
    m_notice->dismiss();
    Cook cook = cookToLight();
    if (!typedTarget(cook.target))
        return;
    // Lighting takes this pit off the choices, so everything is read before.
    const bool drain = m_drain->isChecked();
    const RecordId lot = m_lot->lot();
    const auto done = m_context.verbs.lightCook(cook, despite());
    if (!done) {
        showProblems(done.problems());
        return;
    }
    Problems problems;
    if (drain)
        problems =
            m_context.verbs.note(done.value(), NoteKind::Grease, tr("before lighting")).problems();
    if (problems.isEmpty()) {
        m_drain->setChecked(false);
        m_reason->clear();
        m_reasonRow->clearProblem();
    } else {
        m_context.refuse(problems);
    }
    Q_EMIT lit(done.value(), lot);
}

void LightPanel::showProblems(const Problems &problems)
{
    QStringList elsewhere;
    for (const Problem &problem : problems) {
        if (problem.field == QLatin1String("target")) {
            m_targetRow->setProblem(problem.message);
        } else if (problem.field == QLatin1String("reason")) {
            m_reasonRow->setProblem(problem.message);
            m_reason->setFocus(Qt::OtherFocusReason);
        } else {
            elsewhere << problem.message;
        }
    }
    if (!elsewhere.isEmpty())
        m_notice->showProblem(elsewhere.join(QLatin1Char('\n')));
}

commands::Verbs::Despite LightPanel::despite() const
{
    commands::Verbs::Despite despite{{}, m_reason->text()};
    for (const Blocking &blocking : m_blocking)
        if (!despite.tasks.contains(blocking.task))
            despite.tasks << blocking.task;
    return despite;
}

void LightPanel::focusFirst()
{
    if (QAbstractButton *button = m_pits->button(static_cast<int>(m_pit)))
        button->setFocus(Qt::OtherFocusReason);
}

} // namespace rickyard::views
