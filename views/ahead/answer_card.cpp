#include "views/ahead/answer_card.h"

#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/numeral.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace rickyard::views {

using domain::Headline;
using domain::Reason;
using domain::Standing;

namespace {
constexpr int kRoomBeside = 660; // pixels at 100 %: figure, a readable sentence, chart
constexpr int kLeastRoom = 420;  // the heading with its buttons
} // namespace

StandingLook lookOf(Standing standing)
{
    switch (standing) {
    case Standing::Good:
        return {static_cast<int>(Role::Good), QObject::tr("Nothing to do")};
    case Standing::Watch:
        return {static_cast<int>(Role::Watch), QObject::tr("Keep an eye on it")};
    case Standing::Act:
        return {static_cast<int>(Role::Act), QObject::tr("Act")};
    case Standing::Unknown:
        break;
    }
    return {static_cast<int>(Role::Info), QObject::tr("Not enough records")};
}

ReasonList::ReasonList(QWidget *parent) : QWidget(parent), m_layout(new QVBoxLayout(this))
{
    m_layout->setContentsMargins(0, 0, 0, 0);
    m_layout->setSpacing(theme(this).space(1));
}

void ReasonList::setReasons(const QVector<Reason> &reasons)
{
    while (QLayoutItem *item = m_layout->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    for (const Reason &reason : reasons) {
        auto *line = new QWidget(this);
        auto *row = new QHBoxLayout(line);
        row->setContentsMargins(0, 0, 0, 0);
        row->setSpacing(theme(this).space(3));
        auto *label = new TextLabel(reason.label, TextStyle::Label, Role::InkMuted, line);
        label->setFixedWidth(theme(this).px(190));
        label->setWordWrap(true);
        label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
        const QString text =
            reason.assumption ? QString(tr("Assumed: ") + reason.value) : reason.value;
        auto *value = new TextLabel(text, TextStyle::Body,
                                    reason.assumption ? Role::InkMuted : Role::Ink, line);
        value->setWordWrap(true);
        value->setAlignment(Qt::AlignTop | Qt::AlignLeft);
        value->setTextInteractionFlags(Qt::TextSelectableByMouse);
        row->addWidget(label);
        row->addWidget(value, 1);
        if (reason.link.id != 0) {
            // On a line with the words of the button.
            const int above =
                (theme(this).controlHeight() - value->fontMetrics().lineSpacing()) / 2;
            label->setContentsMargins(0, above, 0, 0);
            value->setContentsMargins(0, above, 0, 0);
            auto *open = new QPushButton(tr("Open"), line);
            open->setProperty("role", "quiet");
            open->setAccessibleName(tr("Open %1").arg(reason.label));
            connect(open, &QPushButton::clicked, this,
                    [this, link = reason.link] { Q_EMIT opened(link); });
            row->addWidget(open, 0, Qt::AlignTop);
        }
        m_layout->addWidget(line);
    }
}

AnswerCard::AnswerCard(const QString &question, const QString &openLabel, QWidget *chart,
                       QWidget *parent)
    : QWidget(parent), m_card(new Card(question, this)),
      m_pill(new StatusPill(Role::Info, tr("Working it out"), this)), m_figure(new Numeral(this)),
      m_sentence(new SentenceLabel(this)), m_why(new QPushButton(tr("Why?"), this)),
      m_reasons(new ReasonList(this))
{
    const Theme &look = theme(this);
    auto *outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    outer->addWidget(m_card);

    m_sentence->setStyles(TextStyle::Body, TextStyle::Heading);
    m_why->setProperty("role", "quiet");
    m_why->setCheckable(true);
    m_why->setAccessibleName(tr("Why: %1").arg(question));
    auto *open = new QPushButton(openLabel, this);
    open->setProperty("role", "quiet");
    open->setAccessibleName(openLabel);
    connect(open, &QPushButton::clicked, this, &AnswerCard::openAsked);
    connect(m_why, &QPushButton::toggled, m_reasons, &QWidget::setVisible);
    connect(m_reasons, &ReasonList::opened, this, &AnswerCard::linkAsked);
    m_reasons->hide();

    m_card->addHeadingWidget(m_why);
    m_card->addHeadingWidget(open);
    m_card->addHeadingWidget(m_pill);
    m_row = new QBoxLayout(QBoxLayout::LeftToRight);
    m_row->setSpacing(look.space(5));
    m_figure->setTextStyle(TextStyle::NumeralHuge);
    m_figure->setFixedWidth(look.px(240));
    m_row->addWidget(m_figure, 0, Qt::AlignTop);
    m_row->addWidget(m_sentence, 1, Qt::AlignVCenter);
    chart->setParent(this);
    m_row->addWidget(chart, 0, Qt::AlignVCenter);
    m_card->body()->addLayout(m_row);
    m_card->body()->addWidget(m_reasons);
}

// Beside each other where there is room, else below each other.
void AnswerCard::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    m_row->setDirection(width() < theme(this).px(kRoomBeside) ? QBoxLayout::TopToBottom
                                                              : QBoxLayout::LeftToRight);
}

QSize AnswerCard::minimumSizeHint() const
{
    QSize size = QWidget::minimumSizeHint();
    size.setWidth(std::min(size.width(), theme(this).px(kLeastRoom)));
    return size;
}

void AnswerCard::setHeadline(const Headline &headline)
{
    const StandingLook look = lookOf(headline.standing);
    m_pill->setStatus(static_cast<Role>(look.role), look.word);
    // The figure is the answer in the largest type; its unit stands below it as a caption.
    m_figure->setVisible(!headline.figure.isEmpty());
    const bool percent = headline.figureUnit.startsWith(QLatin1Char('%'));
    m_figure->setValue(headline.figure, percent ? QStringLiteral("%") : QString());
    m_figure->setCaption(percent ? headline.figureUnit.mid(1).trimmed() : headline.figureUnit);
    m_figure->setRole(headline.standing == Standing::Act ? Role::Act : Role::Ink);
    QVector<SentencePart> parts;
    for (const domain::SentencePart &part : headline.sentence)
        parts.append({part.text, part.emphasised, Role::Ink});
    m_sentence->setParts(parts);
    m_reasons->setReasons(headline.reasons);
    m_why->setEnabled(m_detail != nullptr || !headline.reasons.isEmpty());
}

void AnswerCard::setDetail(QWidget *detail)
{
    m_detail = detail;
    m_card->body()->insertWidget(m_card->body()->indexOf(m_reasons), detail);
    detail->setVisible(m_why->isChecked());
    connect(m_why, &QPushButton::toggled, detail, &QWidget::setVisible);
}

void AnswerCard::openWhy()
{
    m_why->setChecked(true);
}

void AnswerCard::setWaiting()
{
    m_pill->setStatus(Role::Info, tr("Working it out"));
    m_figure->hide();
    m_sentence->setParts({{tr("Reading the books…"), false, Role::Ink}});
}

QString AnswerCard::plainText() const
{
    return m_sentence->plainText();
}

} // namespace rickyard::views
