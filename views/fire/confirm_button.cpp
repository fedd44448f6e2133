#include "views/fire/confirm_button.h"

#include "views/theme/style.h"
#include "views/theme/theme_hub.h"

namespace rickyard::views {

namespace {
constexpr int kAskForMs = 6000; // long enough to read it with a torch in the hand
} // namespace

ConfirmButton::ConfirmButton(const QString &label, QWidget *parent) : QPushButton(parent)
{
    m_fallBack.setSingleShot(true);
    m_fallBack.setInterval(kAskForMs);
    onTheme(this, [this] {
        setFont(theme(this).font(TextStyle::Heading));
        setMinimumHeight(theme(this).px(56));
    });
    connect(&m_fallBack, &QTimer::timeout, this, &ConfirmButton::rest);
    connect(this, &QPushButton::clicked, this, &ConfirmButton::press);
    setLabel(label);
}

void ConfirmButton::setLabel(const QString &label)
{
    m_label = label;
    if (!asking())
        rest();
}

void ConfirmButton::setQuestion(const QString &question)
{
    m_question = question;
}

void ConfirmButton::press()
{
    if (m_question.isEmpty() || asking()) {
        m_fallBack.stop();
        rest();
        Q_EMIT confirmed();
        return;
    }
    m_fallBack.start();
    setText(m_question);
    setAccessibleName(m_question);
    setButtonKind(this, ButtonKind::Danger);
}

void ConfirmButton::rest()
{
    setText(m_label);
    setAccessibleName(m_label);
    setButtonKind(this, ButtonKind::Plain);
}

} // namespace rickyard::views
