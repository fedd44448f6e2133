// One order under way: what, from whom, how it stands, and what may follow. Under it opens what the
// step needs: the message to copy, or the day they promised.
#pragma once

#include "models/domain/plan/order_life.h"
#include "views/page.h"

class QPlainTextEdit;
class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class FieldSet;
class StatusPill;
class TextLabel;

class OrderRow : public QWidget
{
    Q_OBJECT

public:
    enum class Panel { None, Message, Promise };

    OrderRow(PageContext &context, domain::RecordId order, QWidget *parent = nullptr);

    void refresh(); // from the books
    void openPanel(Panel panel);
    [[nodiscard]] domain::RecordId order() const { return m_order; }
    [[nodiscard]] Panel panel() const { return m_panel; }
    [[nodiscard]] QString message() const;
    [[nodiscard]] QString standing() const; // its second line
    [[nodiscard]] FieldSet &promise() const { return *m_promise; }
    void setHairline(bool shown);

Q_SIGNALS:
    void cameAsked(qint64 order);
    void changeAsked(qint64 order);

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    void build();
    void buildButtons(QWidget *into);
    QWidget *buildMessage();
    QWidget *buildPromise();
    QPushButton *button(QWidget *into, const QString &text, const QString &accessible);
    bool step(domain::OrderStep step, const QString &said, QDate promised = {});
    void send();
    void savePromise();
    void showButtons(const domain::WoodOrder &order, bool late, bool askedToday);

    PageContext &m_context;
    domain::RecordId m_order;
    Panel m_panel = Panel::None;
    bool m_hairline = false;
    StatusPill *m_pill = nullptr;
    TextLabel *m_what = nullptr;
    TextLabel *m_standing = nullptr;
    TextLabel *m_late = nullptr;
    QWidget *m_messagePanel = nullptr;
    QWidget *m_promisePanel = nullptr;
    TextLabel *m_messageNote = nullptr;
    QPlainTextEdit *m_message = nullptr;
    FieldSet *m_promise = nullptr;
    QPushButton *m_send = nullptr;
    QPushButton *m_read = nullptr;
    QPushButton *m_promised = nullptr;
    QPushButton *m_came = nullptr;
    QPushButton *m_asked = nullptr;
    QPushButton *m_change = nullptr;
    QPushButton *m_cancel = nullptr;
};

} // namespace rickyard::views
