// One answer on Ahead: how it stands, the sentence with its large figures, a small chart, and its
// own "why" with numbers and assumptions.
#pragma once

#include "models/domain/answers/headline.h"

#include <QWidget>

class QBoxLayout;
class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class Card;
class Numeral;
class SentenceLabel;
class StatusPill;

// The role and the word that a standing is shown with; never the colour alone.
struct StandingLook {
    int role; // Role
    QString word;
};
StandingLook lookOf(domain::Standing standing);

// The reasons of an answer, a line each; assumptions are marked in words.
class ReasonList : public QWidget
{
    Q_OBJECT

public:
    explicit ReasonList(QWidget *parent = nullptr);
    void setReasons(const QVector<domain::Reason> &reasons);

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);

private:
    QVBoxLayout *m_layout;
};

class AnswerCard : public QWidget
{
    Q_OBJECT

public:
    // `question` is the heading ("Order wood?"); `chart` stands at the right of the sentence.
    AnswerCard(const QString &question, const QString &openLabel, QWidget *chart,
               QWidget *parent = nullptr);
    void setHeadline(const domain::Headline &headline);
    void setWaiting();
    // Opens with the reasons, above them; the card takes it.
    void setDetail(QWidget *detail);
    void openWhy();
    [[nodiscard]] QString plainText() const;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void openAsked();
    void linkAsked(const rickyard::domain::Link &link);

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    Card *m_card;
    StatusPill *m_pill;
    Numeral *m_figure;
    SentenceLabel *m_sentence;
    QPushButton *m_why;
    ReasonList *m_reasons;
    QBoxLayout *m_row = nullptr;
    QWidget *m_detail = nullptr;
};

} // namespace rickyard::views
