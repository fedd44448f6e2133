// What a page shows when it has nothing yet: what belongs here and what to do first.
#pragma once

#include <QWidget>

class QPushButton;
class QLabel;

namespace rickyard::views {

class EmptyState : public QWidget
{
    Q_OBJECT

public:
    EmptyState(const QString &iconName, const QString &heading, const QString &text,
               QWidget *parent = nullptr);

    // Shows the primary button; triggered() is emitted when it is pressed.
    void setAction(const QString &label);
    QPushButton *actionButton() const { return action_; }

signals:
    void triggered();

private:
    QLabel *mark_;
    QPushButton *action_;
};

} // namespace rickyard::views
