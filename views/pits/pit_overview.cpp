#include "views/pits/pit_overview.h"

#include "models/domain/quantities/units.h"
#include "views/ahead/answer_card.h"
#include "views/pits/cusum_chart.h"
#include "views/pits/diagnosis_panel.h"
#include "views/pits/fuel_chart.h"
#include "views/pits/fuel_table.h"
#include "views/pits/pit_card.h"
#include "views/pits/repair_list.h"
#include "views/pits/what_if.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/numeral.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/status_pill.h"

#include <QComboBox>
#include <QGridLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace rickyard::views {

using domain::Books;
using domain::Headline;
using domain::Pit;
using domain::RecordId;
using domain::TableId;

PitOverview::PitOverview(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context)
{
    build();
    refresh();
    connect(&context.answers, &workspace::AnswersService::updated, this, &PitOverview::refresh);
}

QWidget *PitOverview::buildAnswer()
{
    const Theme &look = theme(this);
    auto *answer = new QWidget(this);
    auto *row = new QHBoxLayout(answer);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(6));
    m_figure = new Numeral(answer);
    m_figure->setTextStyle(TextStyle::NumeralHuge);
    row->addWidget(m_figure, 0, Qt::AlignTop);
    auto *words = new QVBoxLayout;
    words->setSpacing(look.space(2));
    m_pill = new StatusPill(Role::Info, tr("Working it out"), answer);
    words->addWidget(m_pill, 0, Qt::AlignLeft);
    m_sentence = new SentenceLabel(answer);
    m_sentence->setStyles(TextStyle::Heading, TextStyle::Title);
    words->addWidget(m_sentence);
    m_why = new QPushButton(tr("Why?"), answer);
    m_why->setProperty("role", "quiet");
    m_why->setCheckable(true);
    m_why->setAccessibleName(tr("Show the reasons of this answer"));
    words->addWidget(m_why, 0, Qt::AlignLeft);
    m_reasons = new ReasonList(answer);
    m_reasons->hide();
    words->addWidget(m_reasons);
    row->addLayout(words, 1);
    connect(m_why, &QPushButton::toggled, m_reasons, &QWidget::setVisible);
    connect(m_reasons, &ReasonList::opened, this,
            [this](const domain::Link &link) { m_context.open(link); });
    return answer;
}

void PitOverview::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, look.space(2), 0);
    column->setSpacing(look.space(5));
    column->addWidget(buildAnswer());
    m_cardHolder = new QWidget(this);
    auto *grid = new QGridLayout(m_cardHolder);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(look.space(4));
    column->addWidget(m_cardHolder);
    auto *why = new Card(tr("Pit, wood or weather?"), this);
    m_diagnosis = new DiagnosisPanel(m_context, why);
    why->body()->addWidget(m_diagnosis);
    column->addWidget(why);
    auto *whatIf = new Card(tr("What would a cook take?"), this);
    m_whatIf = new FireWhatIf(whatIf);
    whatIf->addHeadingWidget(m_whatIf->choice());
    whatIf->body()->addWidget(m_whatIf);
    column->addWidget(whatIf);
    auto *chart = new Card(tr("Heat used against degree-hours"), this);
    m_chart = new FuelChart(chart);
    chart->addHeadingWidget(m_chart->choice());
    chart->body()->addWidget(m_chart);
    column->addWidget(chart);
    auto *sums = new Card(tr("Is it chance? The sum of the scores"), this);
    m_sums = new CusumChart(sums);
    sums->body()->addWidget(m_sums);
    column->addWidget(sums);
    auto *repairs = new Card(tr("Before and after"), this);
    m_repairs = new RepairList(m_context, repairs);
    repairs->body()->addWidget(m_repairs);
    column->addWidget(repairs);
    auto *table = new Card(
        tr("Every cook, heat in %1")
            .arg(domain::defaultUnit(domain::Dimension::Heat, m_context.books().yard().metric
                                                                  ? domain::UnitSystem::Metric
                                                                  : domain::UnitSystem::UsCustomary)
                     .symbol),
        this);
    m_table = new FuelTable(m_context, table);
    table->body()->addWidget(m_table);
    column->addWidget(table);
    const auto openCook = [this](qint64 cook) { m_context.open({TableId::Cook, cook}); };
    connect(m_chart, &FuelChart::cookOpened, this, openCook);
    connect(m_sums, &CusumChart::cookOpened, this, openCook);
    connect(m_chart->choice(), &QComboBox::currentIndexChanged, this, &PitOverview::showChosen);
    connect(m_table, &FuelTable::cookOpened, this, openCook);
}

void PitOverview::refresh()
{
    if (!m_context.answers.ready())
        return;
    refreshAnswer();
    refreshCards();
    const domain::FuelAnswer &fuel = m_context.answers.answers().fuel;
    m_chart->showFuel(m_context.books(), fuel);
    m_whatIf->showFuel(m_context.books(), fuel, m_chart->chosenPit());
    showChosen();
    m_table->showFuel(fuel);
}

void PitOverview::showChosen()
{
    if (!m_context.answers.ready())
        return;
    m_sums->showPit(m_context.books(), m_context.answers.answers().fuel, m_chart->chosenPit(),
                    m_context.answers.answers().asOf);
    m_diagnosis->showPit(m_chart->chosenPit());
    m_repairs->showPit(m_chart->chosenPit());
}

void PitOverview::refreshAnswer()
{
    const Headline &headline = m_context.answers.answers().fuel.headline;
    const StandingLook look = lookOf(headline.standing);
    const auto role = static_cast<Role>(look.role);
    m_pill->setStatus(role, look.word);
    m_figure->setValue(headline.figure, headline.figureUnit);
    m_figure->setRole(headline.standing == domain::Standing::Act ? Role::Act : Role::Ink);
    QVector<SentencePart> parts;
    for (const domain::SentencePart &part : headline.sentence)
        parts.append({part.text, part.emphasised, Role::Ink});
    m_sentence->setParts(parts);
    m_reasons->setReasons(headline.reasons);
    m_why->setEnabled(!headline.reasons.isEmpty());
}

void PitOverview::refreshCards()
{
    const Books &books = m_context.books();
    QVector<RecordId> pits;
    for (const Pit &pit : books.pits)
        if (!pit.retired)
            pits << pit.id;
    QVector<RecordId> shown;
    for (PitCard *card : std::as_const(m_cards))
        shown << card->pit();
    if (pits != shown) {
        qDeleteAll(m_cards);
        m_cards.clear();
        for (const RecordId id : std::as_const(pits)) {
            auto *card = new PitCard(books.pits.value(id), pitIndex(books, id), m_cardHolder);
            connect(card, &PitCard::opened, this, [this](qint64 pit) {
                m_context.open({TableId::Pit, pit});
            });
            connect(card, &PitCard::chosen, m_chart, &FuelChart::choosePit);
            connect(card, &PitCard::chosen, m_whatIf, &FireWhatIf::choosePit);
            m_cards << card;
        }
        m_columns = 0;
        arrangeCards();
    }
    for (PitCard *card : std::as_const(m_cards))
        card->showFuel(books, m_context.answers.answers().fuel);
}

// As many in a row as there is room for, each as wide as the others.
void PitOverview::arrangeCards()
{
    const Theme &look = theme(this);
    const int room = std::max(1, (width() + look.space(4)) / (look.px(290) + look.space(4)));
    const int columns = std::max(1, std::min(room, static_cast<int>(m_cards.size())));
    if (columns == m_columns)
        return;
    auto *grid = static_cast<QGridLayout *>(m_cardHolder->layout());
    for (int c = 0; c < grid->columnCount(); ++c)
        grid->setColumnStretch(c, 0);
    m_columns = columns;
    for (int i = 0; i < m_cards.size(); ++i) {
        grid->addWidget(m_cards.at(i), i / columns, i % columns);
        grid->setColumnStretch(i % columns, 1);
        m_cards.at(i)->show();
    }
}

void PitOverview::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    arrangeCards();
}

QString PitOverview::sentence() const
{
    return m_sentence->plainText();
}

} // namespace rickyard::views
