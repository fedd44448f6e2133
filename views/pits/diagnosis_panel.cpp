#include "views/pits/diagnosis_panel.h"

#include "models/domain/answers/answers.h"
#include "models/domain/fire/evidence.h"
#include "views/charts/share_bar.h"
#include "views/fire/fire_words.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/text_label.h"

#include <QGridLayout>
#include <QPushButton>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr double kWorthShowing = 0.03;
constexpr int kMostCauses = 4;

DiagnosisNames namesFor(const Books &books, RecordId pit)
{
    DiagnosisNames names;
    names.pit = books.pits.value(pit).name;
    for (const Lot &lot : books.lots)
        names.lots.insert(lot.id, lot.name);
    return names;
}

} // namespace

DiagnosisPanel::DiagnosisPanel(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_sentence(new TextLabel(QString(), TextStyle::Heading, Role::Ink, this)),
      m_causeHolder(new QWidget(this)), m_causes(new QGridLayout(m_causeHolder)),
      m_checks(new TextLabel(QString(), TextStyle::Body, Role::Ink, this)),
      m_basis(new TextLabel(QString(), TextStyle::Caption, Role::InkMuted, this)),
      m_caution(new CautionNote(QString(), this)),
      m_file(new QPushButton(icon(QStringLiteral("note")), tr("File it, with the task"), this)),
      m_nothing(new QPushButton(icon(QStringLiteral("check")), tr("Looked, found nothing"), this))
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    for (TextLabel *label : {m_sentence, m_checks, m_basis})
        label->setWordWrap(true);
    m_causes->setContentsMargins(0, 0, 0, 0);
    m_causes->setHorizontalSpacing(look.space(4));
    m_causes->setVerticalSpacing(look.space(2));
    m_causes->setColumnStretch(2, 1);
    column->addWidget(m_sentence);
    column->addWidget(m_causeHolder);
    column->addWidget(m_checks);
    column->addWidget(m_caution);
    column->addWidget(m_basis);
    auto *row = new QHBoxLayout;
    m_file->setAccessibleName(tr("File the likeliest cause as a finding and plan the look at it"));
    m_nothing->setAccessibleName(tr("The pit was looked at and nothing was found"));
    m_nothing->setToolTip(tr("Its last cooks then count as ordinary ones"));
    row->addWidget(m_file);
    row->addWidget(m_nothing);
    row->addStretch(1);
    column->addLayout(row);
    connect(m_file, &QPushButton::clicked, this, &DiagnosisPanel::file);
    connect(m_nothing, &QPushButton::clicked, this, &DiagnosisPanel::foundNothing);
}

QString DiagnosisPanel::sentence() const
{
    return m_sentence->text();
}

void DiagnosisPanel::showPit(RecordId pit)
{
    m_pit = pit;
    const Books &books = m_context.books();
    const FuelAnswer &fuel = m_context.answers.answers().fuel;
    const auto question = questionOf(fuel, pit);
    m_diagnosis = question ? diagnosisOf(evidenceOf(books, fuel), *question) : Diagnosis();
    const DiagnosisNames names = namesFor(books, pit);
    const bool any = !m_diagnosis.empty();
    m_sentence->setText(
        any ? diagnosisSentence(m_diagnosis, names, wordingOf(books))
            : tr("%1 burns as it should: there is nothing to explain.").arg(names.pit));
    m_causeHolder->setVisible(any);
    m_checks->setVisible(any);
    m_basis->setVisible(any);
    m_file->setVisible(any);
    m_nothing->setVisible(any);
    m_caution->setVisible(false);
    m_file->setEnabled(!m_context.readOnly());
    m_nothing->setEnabled(!m_context.readOnly());
    if (!any)
        return;
    m_first = causeName(m_diagnosis.causes.first(), names);
    showCauses(names);
    showChecks();
}

void DiagnosisPanel::showCauses(const DiagnosisNames &names)
{
    while (QLayoutItem *item = m_causes->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    const Books &books = m_context.books();
    const FireWords words(books);
    const Wording wording = wordingOf(books);
    for (int i = 0; i < m_diagnosis.causes.size() && i < kMostCauses; ++i) {
        const Cause &cause = m_diagnosis.causes.at(i);
        if (i > 0 && cause.probability < kWorthShowing)
            break;
        auto *share = new TextLabel(words.share(cause.probability), TextStyle::BodyStrong,
                                    Role::Ink, m_causeHolder);
        auto *name = new TextLabel(causeName(cause, names), TextStyle::BodyStrong,
                                   i == 0 ? Role::Ink : Role::InkMuted, m_causeHolder);
        auto *why = new TextLabel(evidenceWords(cause, names, wording), TextStyle::Body,
                                  Role::InkMuted, m_causeHolder);
        why->setWordWrap(true);
        m_causes->addWidget(share, i, 0, Qt::AlignRight | Qt::AlignTop);
        m_causes->addWidget(name, i, 1, Qt::AlignTop);
        m_causes->addWidget(why, i, 2);
    }
}

void DiagnosisPanel::showChecks()
{
    QStringList lines;
    QStringList cautions;
    int number = 0;
    for (const DiagnosisCheck &check : checksOf(m_diagnosis.causes.first().kind)) {
        lines << QStringLiteral("%1. %2").arg(++number).arg(check.words);
        // Two checks may ask for the same care: each sentence is said once.
        const QStringList sentences = check.caution.split(QStringLiteral(". "), Qt::SkipEmptyParts);
        for (QString sentence : sentences) {
            if (!sentence.endsWith(QLatin1Char('.')))
                sentence += QLatin1Char('.');
            if (!cautions.contains(sentence))
                cautions << sentence;
        }
    }
    m_steps = lines.join(QLatin1Char('\n'));
    m_checks->setText(m_steps);
    m_checks->setVisible(!lines.isEmpty());
    m_cautions = cautions.join(QLatin1Char(' '));
    m_caution->setCaution(m_cautions);
    m_caution->setVisible(!cautions.isEmpty());
    QStringList basis{tr("Checks: %1.").arg(checksBasis())};
    if (const QString not_ = notJudgedWords(m_diagnosis); !not_.isEmpty())
        basis << not_;
    m_basis->setText(basis.join(QLatin1Char(' ')));
}

void DiagnosisPanel::file()
{
    const Books &books = m_context.books();
    const Instant now = m_context.verbs.now();
    Finding finding;
    finding.pit = m_pit;
    finding.opened = now;
    finding.text = tr("Fuel watch: %1 suspected").arg(m_first);
    UpkeepTask task;
    task.name = tr("Look: %1").arg(m_first);
    task.pit = m_pit;
    task.target = tr("what burns wood");
    task.once = true;
    task.everyDays = 7;
    task.since = dayOf(now, zoneOf(wordingOf(books)));
    task.work = Duration::ofBase(1800);
    task.coldBefore = durationFromHours(8);
    task.priority = 5;
    task.intervalFrom = IntervalSource::CommonPractice;
    task.steps = m_steps;
    task.cautions = m_cautions;
    const auto filed = m_context.verbs.fileFinding(finding, task);
    if (!filed)
        m_context.refuse(filed.problems());
    else
        m_context.say(tr("Filed under Findings, with the task “%1” under Upkeep.").arg(task.name));
}

void DiagnosisPanel::foundNothing()
{
    Finding finding;
    finding.pit = m_pit;
    finding.opened = m_context.verbs.now();
    finding.state = FindingState::Nothing;
    finding.text = tr("Looked at the pit after the fuel flag: nothing found");
    const auto filed = m_context.verbs.add(finding, tr("looked, found nothing"));
    if (!filed)
        m_context.refuse(filed.problems());
    else
        m_context.say(tr("Noted. Its last cooks now count as ordinary ones, and the sum starts "
                         "anew."));
}

} // namespace rickyard::views
