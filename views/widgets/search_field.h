// A search line: magnifier inside, a button to empty it, Escape empties too.
#pragma once

#include <QLineEdit>

namespace rickyard::views {

class SearchField : public QLineEdit
{
    Q_OBJECT

public:
    explicit SearchField(const QString &placeholder, QWidget *parent = nullptr);

    QSize sizeHint() const override;

protected:
    void keyPressEvent(QKeyEvent *event) override;
};

} // namespace rickyard::views
