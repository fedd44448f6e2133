#include "views/upkeep/finding_detail.h"

#include "models/domain/fire/repairs.h"
#include "models/domain/upkeep/due_words.h"
#include "models/items/wording.h"
#include "models/workspace/commands/upkeep_verbs.h"
#include "views/theme/theme_hub.h"
#include "views/upkeep/check_words.h"
#include "views/upkeep/photo_strip.h"
#include "views/upkeep/upkeep_words.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/text_label.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

QString when(const Books &books, Instant time)
{
    return items::timeText(books, time, QLocale(QStringLiteral("en_US")));
}

} // namespace

FindingDetail::FindingDetail(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_origin(new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this)),
      m_effect(new TextLabel(QString(), TextStyle::BodyStrong, Role::Ink, this)),
      m_links(new QWidget(this)), m_linkFlow(new FlowLayout(m_links)),
      m_photos(new PhotoStrip(context, this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(2));
    m_origin->setWordWrap(true);
    m_effect->setWordWrap(true);
    m_linkFlow->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_origin);
    column->addWidget(m_effect);
    column->addWidget(m_links);
    column->addWidget(m_photos);
}

void FindingDetail::showFinding(RecordId id)
{
    m_finding = id;
    const auto found = m_context.books().findings.constFind(id);
    setVisible(found != m_context.books().findings.constEnd());
    if (isHidden())
        return;
    m_origin->setText(originText(*found));
    m_effect->setText(effectText(*found));
    m_effect->setVisible(!m_effect->text().isEmpty());
    clearLayout(m_linkFlow);
    const auto link = [this](const QString &text, Link to) {
        if (to.id == 0)
            return;
        auto *button = new QPushButton(text, m_links);
        button->setProperty("role", "quiet");
        button->setAccessibleName(text);
        connect(button, &QPushButton::clicked, this, [this, to] { m_context.open(to); });
        m_linkFlow->addWidget(button);
        button->show();
    };
    link(tr("Open the cook"), {TableId::Cook, found->cook.value_or(0)});
    link(tr("Open the visit it was found on"), {TableId::Visit, found->visit.value_or(0)});
    link(tr("Open the visit that mended it"), {TableId::Visit, found->mendedBy.value_or(0)});
    m_links->setVisible(m_linkFlow->count() > 0);
    m_photos->showFinding(id);
}

QString FindingDetail::originText(const Finding &finding) const
{
    const Books &books = m_context.books();
    QStringList lines;
    if (finding.visit) {
        const Visit visit = books.visits.value(*finding.visit);
        lines
            << tr("Found on %1, %2.").arg(taskPhrase(books, visit.task), when(books, visit.start));
    }
    if (finding.cook)
        lines
            << tr("Seen on the cook of %1.").arg(when(books, books.cooks.value(*finding.cook).lit));
    if (lines.isEmpty())
        lines << tr("Filed %1.").arg(when(books, finding.opened));
    if (finding.mendedBy) {
        const Visit visit = books.visits.value(*finding.mendedBy);
        lines
            << tr("Mended by %1, %2.").arg(taskPhrase(books, visit.task), when(books, visit.start));
    } else if (finding.state == FindingState::Mended) {
        lines << tr("Set to mended without a visit: choose the one that did it, so that what it "
                    "saved can be worked out.");
    }
    return lines.join(QLatin1Char('\n'));
}

// Before and after, as the Pits page says it.
QString FindingDetail::effectText(const Finding &finding) const
{
    if (finding.state != FindingState::Mended || !m_context.answers.ready())
        return {};
    const Answers &answers = m_context.answers.answers();
    const auto repairs =
        repairsOf(m_context.books(), answers.fuel, answers.asOf, wordingOf(m_context.books()));
    for (const Repair &repair : repairs)
        if (repair.finding == finding.id)
            return repair.sentence;
    return {};
}

QString FindingDetail::words() const
{
    return QString(m_origin->text() + QLatin1Char('\n') + m_effect->text());
}

VisitDetail::VisitDetail(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_text(new TextLabel(QString(), TextStyle::Body, Role::InkMuted, this)),
      m_open(new QPushButton(tr("Open the work"), this)), m_photos(new PhotoStrip(context, this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(theme(this).space(2));
    m_text->setWordWrap(true);
    column->addWidget(m_text);
    column->addWidget(m_open, 0, Qt::AlignLeft);
    column->addWidget(m_photos);
    connect(m_open, &QPushButton::clicked, this,
            [this] { Q_EMIT startAsked(m_context.books().visits.value(m_visit).task); });
}

void VisitDetail::showVisit(RecordId id)
{
    m_visit = id;
    const Books &books = m_context.books();
    const auto found = books.visits.constFind(id);
    setVisible(found != books.visits.constEnd());
    if (isHidden())
        return;
    const UpkeepTask task = books.tasks.value(found->task);
    QStringList lines;
    const auto steps = stepsOf(task.steps).size();
    if (steps > 0 && found->state != VisitState::Placed)
        lines << tr("%1 of %2 steps ticked.").arg(commands::tickedSteps(*found).size()).arg(steps);
    for (const CheckReading &reading : books.checkReadings)
        if (reading.visit == id)
            lines << tr("%1: %2").arg(pointName(task, reading.point),
                                      checkValueText(number(reading.value), task.readingUnit));
    for (const Finding &finding : books.findings) {
        if (finding.visit == id)
            lines << tr("Found: %1").arg(finding.text);
        if (finding.mendedBy == id)
            lines << tr("Mended: %1").arg(finding.text);
    }
    m_text->setText(lines.join(QLatin1Char('\n')));
    m_text->setVisible(!lines.isEmpty());
    const bool open = found->state == VisitState::Placed || found->state == VisitState::Started;
    m_open->setVisible(open && !m_context.readOnly());
    m_open->setText(found->state == VisitState::Started ? tr("Go on with the work")
                                                        : tr("Start the work"));
    m_open->setAccessibleName(m_open->text());
    m_photos->showVisit(id);
}

QString VisitDetail::words() const
{
    return m_text->text();
}

} // namespace rickyard::views
