// An answer as a sentence whose key figures stand large in it. It wraps between words, keeps all
// words of a line on one baseline, and is read as one sentence by a screen reader.
#pragma once

#include "views/theme/theme.h"

#include <QVector>
#include <QWidget>

namespace rickyard::views {

struct SentencePart {
    QString text;
    bool emphasised = false;
    Role role = Role::Ink; // colour of an emphasised part
};

class SentenceLabel : public QWidget
{
    Q_OBJECT

public:
    explicit SentenceLabel(QWidget *parent = nullptr);

    void setParts(const QVector<SentencePart> &parts);
    QString plainText() const;
    // Sizes of the words and of the figures; Heading and NumeralLarge unless set.
    void setStyles(TextStyle words, TextStyle figures);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    struct Word {
        QString text;
        bool emphasised = false;
        Role role = Role::Ink;
        bool spaceBefore = false;
        QPointF baseline;
    };
    QVector<Word> words() const;
    // Places the words for a width and returns the height used.
    double place(QVector<Word> &words, double width) const;
    QFont fontOf(const Word &word) const;

    QVector<SentencePart> parts_;
    TextStyle wordStyle_ = TextStyle::Title;
    TextStyle figureStyle_ = TextStyle::NumeralLarge;
};

} // namespace rickyard::views
