// A line of input with its unit inside the field at the right. With several units the unit is a
// small menu, opened by a click or Alt+Down; choosing one only says so (unitChanged): what happens
// to the number is the caller's matter.
#pragma once

#include <QLineEdit>
#include <QStringList>

namespace rickyard::views {

class UnitLineEdit : public QLineEdit
{
    Q_OBJECT

public:
    explicit UnitLineEdit(QWidget *parent = nullptr);
    explicit UnitLineEdit(const QString &unit, QWidget *parent = nullptr);

    void setUnit(const QString &unit);
    QString unit() const { return unit_; }
    // Two or more make the unit a menu. The current one is kept if it is among them.
    void setUnits(const QStringList &units);
    QStringList units() const { return units_; }

    QSize sizeHint() const override;

signals:
    void unitChanged(const QString &unit);

protected:
    void paintEvent(QPaintEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void changeEvent(QEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;

private:
    QRect unitRect() const;
    void refit();
    void openMenu();
    bool hasMenu() const { return units_.size() > 1; }

    QString unit_;
    QStringList units_;
};

} // namespace rickyard::views
