// A question where the hand is: words and two answers, no dialog. Hidden until it is asked.
#pragma once

#include <QWidget>

class QPushButton;

namespace rickyard::views {

class TextLabel;

class InlineQuestion : public QWidget
{
    Q_OBJECT

public:
    InlineQuestion(const QString &goOn, const QString &goBack, QWidget *parent = nullptr);

    void ask(const QString &question); // the way back has the focus
    void dismiss();
    [[nodiscard]] QString question() const;

Q_SIGNALS:
    void wentOn();
    void wentBack();

protected:
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    TextLabel *m_words;
    QPushButton *m_goOn;
    QPushButton *m_goBack;
};

} // namespace rickyard::views
