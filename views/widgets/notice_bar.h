// A notice inside the window: nothing is blocked, nothing is lost. Up to two actions and a way to
// put it away.
#pragma once

#include "views/theme/theme.h"

#include <QVector>
#include <QWidget>

#include <functional>

class QHBoxLayout;
class QToolButton;

namespace rickyard::views {

class TextLabel;

struct NoticeAction {
    QString label;
    std::function<void()> run;
};

class NoticeBar : public QWidget
{
    Q_OBJECT

public:
    // Starts hidden.
    explicit NoticeBar(QWidget *parent = nullptr);

    void showInfo(const QString &text, const QVector<NoticeAction> &actions = {});
    void showGood(const QString &text, const QVector<NoticeAction> &actions = {});
    void showProblem(const QString &text, const QVector<NoticeAction> &actions = {});
    void dismiss();
    QString text() const;
    Role role() const { return role_; }

signals:
    void dismissed();

protected:
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    void show(Role role, const QString &text, const QVector<NoticeAction> &actions);

    Role role_ = Role::Info;
    TextLabel *text_;
    QHBoxLayout *actions_;
    QToolButton *close_;
};

} // namespace rickyard::views
