// Finding and pressing what is on the screen, by the names that screen readers say.
#pragma once

#include <QCoreApplication>
#include <QTest>
#include <QWidget>

namespace rickyard::test {

// The shown widget of that accessible name, or null.
template <class T>
T *named(QWidget &root, const QString &name)
{
    QCoreApplication::processEvents(); // what was just made is shown a moment later
    const auto all = root.findChildren<T *>();
    for (T *one : all)
        if (one->accessibleName() == name && one->isVisibleTo(&root))
            return one;
    return nullptr;
}

inline void click(QWidget *widget)
{
    QVERIFY(widget != nullptr);
    QTest::mouseClick(widget, Qt::LeftButton);
}

} // namespace rickyard::test
