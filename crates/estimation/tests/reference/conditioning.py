"""Generalised least squares and conditioning with numpy 2.4, for tests/reference.rs: python conditioning.py"""
import numpy as np

np.set_printoptions(precision=12)

P = np.array([[2.0, 0.5, 0.1], [0.5, 1.0, -0.3], [0.1, -0.3, 0.7]])
m = np.array([1.0, -2.0, 0.5])
H = np.array([[1.0, 1.0, 0.0], [0.0, 2.0, -1.0]])
R = np.array([[0.09, 0.02], [0.02, 0.16]])
y = np.array([-0.4, -3.9])
K = P @ H.T @ np.linalg.inv(H @ P @ H.T + R)
print("conditioned", repr(m + K @ (y - H @ m)), repr(P - K @ H @ P))
# the same as generalised least squares, the prior being three readings of the unknowns themselves
A = np.vstack([np.eye(3), H])
C = np.block([[P, np.zeros((3, 2))], [np.zeros((2, 3)), R]])
W = np.linalg.inv(C)
cov = np.linalg.inv(A.T @ W @ A)
print("least squares", repr(cov @ A.T @ W @ np.concatenate([m, y])), repr(cov))
x = np.array([0.0, 1.0, 2.0, 3.0, 5.0])
D = np.column_stack([np.ones(5), x])
C = 0.04 * np.exp(-np.abs(x[:, None] - x[None, :]) / 2.0)
z = np.array([1.02, 1.48, 2.11, 2.57, 3.49])
W = np.linalg.inv(C)
cov = np.linalg.inv(D.T @ W @ D)
b = cov @ D.T @ W @ z
print("line", repr(b), repr(cov), np.sqrt((z - D @ b) @ W @ (z - D @ b) / 3))
