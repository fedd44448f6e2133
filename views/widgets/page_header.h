// The head of a page: its name, a line about its state, and its actions at the right.
#pragma once

#include <QWidget>

class QHBoxLayout;

namespace rickyard::views {

class TextLabel;

class PageHeader : public QWidget
{
    Q_OBJECT

public:
    explicit PageHeader(const QString &title, const QString &subtitle = QString(),
                        QWidget *parent = nullptr);

    void setTitle(const QString &title);
    void setSubtitle(const QString &subtitle);
    // Adds a button or any other widget at the right end.
    void addAction(QWidget *action);

private:
    TextLabel *title_;
    TextLabel *subtitle_;
    QHBoxLayout *actions_;
};

} // namespace rickyard::views
