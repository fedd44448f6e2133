// A button that asks in its own face: the first press shows the question, the second does it.
// Left alone, it falls back after a few seconds.
#pragma once

#include <QPushButton>
#include <QTimer>

namespace rickyard::views {

class ConfirmButton : public QPushButton
{
    Q_OBJECT

public:
    explicit ConfirmButton(const QString &label, QWidget *parent = nullptr);
    void setLabel(const QString &label);
    // Empty: the first press does it.
    void setQuestion(const QString &question);
    [[nodiscard]] bool asking() const { return m_fallBack.isActive(); }

Q_SIGNALS:
    void confirmed();

private:
    void press();
    void rest();

    QString m_label;
    QString m_question;
    QTimer m_fallBack;
};

} // namespace rickyard::views
