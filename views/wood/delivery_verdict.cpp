#include "views/wood/delivery_verdict.h"

#include "models/domain/answers/wording.h"
#include "models/domain/quantities/units.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/numeral.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"
#include "views/wood/wood_words.h"

#include <QVBoxLayout>

namespace rickyard::views {

using domain::Standing;

namespace {

// "6.4 million Btu, as 994 seasoned lb": at the moisture it has.
QString netHeatText(domain::Heat heat, const domain::Wording &wording)
{
    const QString words = domain::heatWords(heat, wording);
    if (wording.metric)
        return words;
    return DeliveryVerdict::tr("%1 million Btu, as much as %2")
        .arg(domain::formatNumber(heat.toDouble() / domain::kJoulesPerBtu / 1e6, 1, woodLocale()),
             words);
}

} // namespace

DeliveryVerdict::DeliveryVerdict(QWidget *parent)
    : QWidget(parent), m_pill(new StatusPill(Role::Info, QString())), m_sentence(new SentenceLabel),
      m_share(new Numeral), m_column(new QVBoxLayout(this))
{
    const Theme &look = theme(this);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(look.space(1));
    auto *pill = new QHBoxLayout;
    pill->addWidget(m_pill);
    pill->addStretch(1);
    m_column->addLayout(pill);
    m_column->addSpacing(look.space(2));
    m_sentence->setStyles(TextStyle::Heading, TextStyle::Title);
    m_column->addWidget(m_sentence);
    m_column->addSpacing(look.space(3));
    m_column->addWidget(m_share);
    m_column->addSpacing(look.space(2));
    m_column->addStretch(1);
    setAccessibleName(tr("What this delivery is"));
}

void DeliveryVerdict::show(const domain::DeliveryCheck &check, const domain::Wording &wording)
{
    m_pill->setStatus(deliveryRole(check.headline.standing), deliveryWord(check.headline.standing));
    showSentence(check.headline);
    m_share->setVisible(!check.headline.figure.isEmpty());
    m_share->setValue(check.headline.figure, QStringLiteral("%"));
    m_share->setCaption(tr("of the wood that was paid for"));
    QVector<domain::Reason> reasonsShown = check.headline.reasons;
    if (check.netHeat) {
        qsizetype at = 0; // after the wood it is the heat of
        while (at < reasonsShown.size() && reasonsShown.at(at).label != QStringLiteral("Price"))
            ++at;
        reasonsShown.insert(at, {tr("Net heat"), netHeatText(*check.netHeat, wording), true, {}});
    }
    showReasons(reasonsShown);
    setAccessibleDescription(QString(sentence() + QLatin1Char('\n') + reasons()));
}

void DeliveryVerdict::showSentence(const domain::Headline &headline)
{
    const Role role =
        headline.standing == Standing::Unknown ? Role::Ink : deliveryRole(headline.standing);
    bool stressed = false;
    for (const domain::SentencePart &part : headline.sentence)
        stressed = stressed || part.emphasised;
    QVector<SentencePart> parts;
    // The first part is the lot's name, which stands in its own field here.
    for (const domain::SentencePart &part : headline.sentence.mid(1))
        parts.append({part.text, part.emphasised || !stressed, role});
    if (!parts.isEmpty() && !parts.first().text.isEmpty())
        parts.first().text[0] = parts.first().text.at(0).toUpper();
    m_sentence->setParts(parts);
}

void DeliveryVerdict::showReasons(const QVector<domain::Reason> &reasons)
{
    while (m_findings.size() < reasons.size()) {
        Finding finding{new TextLabel(QString(), TextStyle::Caption, Role::InkMuted),
                        new TextLabel(QString(), TextStyle::Body)};
        finding.value->setWordWrap(true);
        // Before the stretch that keeps them together.
        m_column->insertWidget(m_column->count() - 1, finding.label);
        m_column->insertWidget(m_column->count() - 1, finding.value);
        finding.label->setContentsMargins(0, theme(this).space(1), 0, 0);
        m_findings << finding;
    }
    for (qsizetype i = 0; i < m_findings.size(); ++i) {
        const bool used = i < reasons.size();
        m_findings.at(i).label->setVisible(used);
        m_findings.at(i).value->setVisible(used);
        QString value = used ? reasons.at(i).value : QString();
        if (!value.isEmpty())
            value[0] = value.at(0).toUpper();
        m_findings.at(i).label->setText(used ? reasons.at(i).label : QString());
        m_findings.at(i).value->setText(value);
    }
}

QSize DeliveryVerdict::minimumSizeHint() const
{
    const int least = theme(this).px(200);
    return {least, m_column->totalHeightForWidth(qMax(least, width()))};
}

void DeliveryVerdict::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    updateGeometry();
}

QString DeliveryVerdict::sentence() const
{
    return m_sentence->plainText();
}

QString DeliveryVerdict::reasons() const
{
    QStringList lines;
    for (const Finding &finding : m_findings)
        if (!finding.value->text().isEmpty())
            lines << QString(finding.label->text() + QStringLiteral(": ") + finding.value->text());
    return lines.join(QLatin1Char('\n'));
}

} // namespace rickyard::views
