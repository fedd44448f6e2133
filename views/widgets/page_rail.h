// The rail of pages at the left: an icon and a word a page, one of them current.
// Arrow keys, Home and End move along it; a badge counts what waits on a page.
#pragma once

#include <QAbstractButton>
#include <QVector>
#include <QWidget>

class QVBoxLayout;

namespace rickyard::views {

class RailButton : public QAbstractButton
{
    Q_OBJECT

public:
    RailButton(const QString &iconName, const QString &label, QWidget *parent);

    void setBadge(int count, const QString &meaning);
    int badge() const { return badge_; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void stepped(int by);   // arrow keys
    void jumped(bool last); // Home and End

protected:
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    QString iconName_;
    int badge_ = 0;
};

class PageRail : public QWidget
{
    Q_OBJECT

public:
    explicit PageRail(QWidget *parent = nullptr);

    // Adds a page at the end and returns its index. The first one is current.
    int addPage(const QString &iconName, const QString &label);
    int count() const { return static_cast<int>(buttons_.size()); }
    int current() const { return current_; }
    void setCurrent(int index);
    // count 0 hides the badge. meaning says what is counted ("overdue"), for screen readers.
    void setBadge(int index, int count, const QString &meaning);
    RailButton *button(int index) const { return buttons_.value(index); }
    // Puts a widget at the foot of the rail (settings, the yard's name).
    void addFootWidget(QWidget *widget);

signals:
    void currentChanged(int index);

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    void focusOn(int index);
    void relayout();

    QVector<RailButton *> buttons_;
    QVBoxLayout *layout_;
    QVBoxLayout *foot_;
    int current_ = -1;
};

} // namespace rickyard::views
